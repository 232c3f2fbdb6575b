// SPDX-License-Identifier: Apache-2.0
// The look: a shopkeeper's ledger. Ruled paper, a double line in the margin, figures in a plain hand.
// Colours of the pans: see svg_parts.cpp. Text contrast is at least 4.5 to 1, lines that matter at least 3 to 1.
#include "export/page_assets.h"

#include "base/sha256.h"
#include "export/svg_parts.h"

namespace cp {

namespace {

constexpr std::string_view kStyle = R"css(:root{color-scheme:light dark;--page:#f6f1e6;--paper:#fffdf8;--ink:#1b1b1b;--dim:#5b564c;--hair:#8d8676;--rule:#1b1b1b;--line:#cbbfa4;--link:#00568a;
--left:#0072b2;--left-tint:#e3f0f8;--right:#e69f00;--right-edge:#966300;--right-tint:#fdf1d9;--gone:#858585;--gone-tint:#ecebe7;--strike:#d55e00;--ring:#009e73}
@media (prefers-color-scheme:dark){:root{--page:#15181c;--paper:#1d2127;--ink:#f1ece1;--dim:#b9b3a6;--hair:#7a8291;--rule:#d8d2c5;--line:#4c5360;--link:#8ecdf5;
--left:#56b4e9;--left-tint:#1b3446;--right:#e69f00;--right-edge:#e69f00;--right-tint:#43351a;--gone:#8a8f98;--gone-tint:#2b3037;--strike:#ff7a1f;--ring:#2fc79a}.ltxt{fill:#000}}
@media (prefers-contrast:more){:root{--page:#fff;--paper:#fff;--ink:#000;--dim:#000;--hair:#555;--line:#000;--link:#003a66}}
@media (prefers-contrast:more) and (prefers-color-scheme:dark){:root{--page:#000;--paper:#000;--ink:#fff;--dim:#fff;--hair:#bbb;--line:#fff;--link:#b7e0ff}}
*{box-sizing:border-box}
html{font-size:clamp(1rem,.7rem + .68vw,1.55rem)}
body{margin:0;min-height:100vh;display:flex;flex-direction:column;background:var(--page);color:var(--ink);font-family:Georgia,"DejaVu Serif",serif;line-height:1.5}
a{color:var(--link)}
h1,h2{line-height:1.2;margin:0;text-wrap:balance}
h1{font-size:1.15rem}
h2{font-size:1.5rem}
p{margin:.7em 0 0;max-width:38em}
dfn{font-style:normal;font-weight:bold;text-decoration:underline;text-decoration-color:var(--right);text-decoration-thickness:.12em;text-underline-offset:.15em}
:focus-visible{outline:3px solid var(--link);outline-offset:3px}
h2:focus{outline:none}
.skip{position:absolute;left:1rem;top:-10rem;background:var(--paper);padding:.5rem 1rem;z-index:2}
.skip:focus{top:.5rem}
header{display:flex;flex-wrap:wrap;gap:.2rem 2rem;align-items:baseline;justify-content:space-between;padding:.6rem 1.6rem .5rem;border-bottom:4px double var(--line)}
.contents{font-size:.85rem;max-width:100%}
.contents summary{cursor:pointer;min-height:24px}
.contents ol{margin:.4rem 0;padding-left:2.2em}
.contents li{padding:.15em 0}
.contents a{display:inline-block;min-height:24px}
[aria-current]{font-weight:bold}
.course{display:flex;flex-wrap:wrap;gap:.2rem 1.2rem;font-size:.85rem}
.course a{display:inline-block;min-height:24px}
.without{padding:.6rem 1.6rem}
main{flex:1}
.scene{padding:1rem 1.6rem 2rem;border-bottom:1px solid var(--line)}
.spread{display:grid;gap:.8rem 2.4rem;align-items:start;grid-template-areas:"head" "board" "words"}
.heading{grid-area:head;min-width:0}
.words{grid-area:words;min-width:0}
.heading,.words{border-left:4px double var(--line);padding-left:1.1rem}
.spread>.board{grid-area:board;min-width:0}
.number{color:var(--dim);font-size:.85rem;margin:0}
.words>p:first-child{margin-top:0}
.scene svg{display:block;width:100%;height:auto}
.board{max-width:46rem;margin:0}
.pans{margin:.9rem 0 0;max-width:36rem}
.tally{border-collapse:collapse;table-layout:fixed;margin-top:.9rem;font-variant-numeric:tabular-nums;width:100%;max-width:36rem}
.tally caption{text-align:left;font-size:.85rem;color:var(--dim);padding-bottom:.2rem}
.tally th,.tally td{border-bottom:1px solid var(--line);padding:.12rem .1rem;text-align:center;font-size:.9rem}
.tally th:first-child{width:31%}
.tally th[scope=row]{text-align:left;font-weight:normal}
.tally tbody tr:last-child th,.tally tbody tr:last-child td{border-top:2px solid var(--ink);border-bottom:4px double var(--ink);font-weight:bold}
details.steps,details.aside{margin-top:1rem;font-size:.9rem}
summary{cursor:pointer}
details.steps ol{padding-left:2.4em;margin:.5rem 0}
details.aside{border:1px dashed var(--line);padding:.4rem .8rem}
details.answer{margin-top:1.2rem}
details.answer>summary{display:inline-block;border:2px solid var(--ink);padding:.4rem 1rem;background:var(--paper)}
details.answer .board{margin-top:1rem;max-width:32rem}
.exercise{margin-top:1rem;border-left:3px solid var(--right);padding-left:.8rem}
.question{margin-top:0;font-style:italic}
details.reply{margin-top:.5rem;font-size:.95rem}
details.reply .board{margin-top:.7rem;max-width:26rem}
code{font-size:.9em}
.series main{padding:1rem 1.6rem 2rem}
.lessons{list-style:none;margin:1.2rem 0;padding:0}
.entry{display:grid;grid-template-columns:minmax(7rem,13rem) minmax(0,1fr);gap:1.4rem;padding:1.1rem 0;border-top:1px solid var(--line)}
.entry svg{display:block;width:100%;height:auto}
.entry h2{font-size:1.25rem}
.entry dl{display:grid;grid-template-columns:minmax(6em,auto) minmax(0,1fr);gap:.1rem 1rem;margin:.5rem 0 0}
.entry dt{color:var(--dim)}
.entry dd{margin:0}
.scroll{overflow-x:auto}
.series table{border-collapse:collapse;margin-top:.6rem}
.series caption{text-align:left;color:var(--dim);font-size:.9rem}
.series th,.series td{border-bottom:1px solid var(--line);padding:.15rem .8rem .15rem 0;text-align:left;font-weight:normal;font-size:.95rem}
.bar{position:sticky;bottom:0;display:flex;justify-content:center;align-items:center;gap:1.2rem;padding:.4rem 1rem;background:var(--paper);border-top:4px double var(--line)}
.bar[hidden]{display:none}
.bar button{font:inherit;font-size:.9rem;color:var(--ink);background:var(--page);border:2px solid var(--ink);padding:.25rem 1.1rem;min-height:2.2rem;cursor:pointer}
.bar button[aria-disabled=true]{color:var(--dim);border-style:dotted;cursor:default}
.bar output{min-width:8em;text-align:center;font-size:.9rem}
@media (min-width:60rem){.spread{grid-template-columns:minmax(0,min(50vw,max(24rem,(100vh - 9.4rem)*.875))) minmax(0,1fr);grid-template-rows:auto 1fr;grid-template-areas:"board head" "board words";row-gap:0}
.spread>.board{max-width:none}.pans svg{max-height:32vh}.words{padding-top:.6rem;align-self:stretch}.heading{align-self:stretch}}
@media (max-width:40rem){header,.scene,.series main{padding-left:.8rem;padding-right:.8rem}.entry{grid-template-columns:minmax(0,1fr)}.entry .board{max-width:13rem}.entry dl{grid-template-columns:minmax(0,1fr)}.entry dd{margin-bottom:.3rem}.heading,.words{padding-left:.6rem}.tally th,.tally td{font-size:.78rem}.bar{gap:.6rem}.bar button{padding:.25rem .7rem}.bar output{min-width:6em}}
@media screen{.stepping .scene:not(.now){display:none}.stepping .scene{border-bottom:0}}
@media (prefers-reduced-motion:reduce){*{transition:none!important;animation:none!important;scroll-behavior:auto!important}}
@media print{body{display:block;min-height:0}@page{size:A4;margin:16mm}
:root{color-scheme:light;--page:#fff;--paper:#fff;--ink:#000;--dim:#444;--hair:#888;--rule:#000;--line:#999;--link:#000;--left:#0072b2;--left-tint:#e3f0f8;--right:#e69f00;--right-edge:#966300;--right-tint:#fdf1d9;--gone:#858585;--gone-tint:#ecebe7;--strike:#d55e00;--ring:#009e73}
.ltxt{fill:#fff}html{font-size:10.5pt}.skip,.bar,.contents,.course,.without,details.answer>summary,details.steps>summary,details.reply{display:none}
header{padding:0 0 2mm}.scene{display:block;padding:4mm 0;break-inside:avoid}
.spread{grid-template-columns:86mm 1fr;grid-template-rows:auto 1fr;grid-template-areas:"board head" "board words";gap:0 5mm}
.heading,.words{padding-left:3mm;align-self:stretch}.words{padding-top:2mm}.pans,.tally{max-width:none;break-inside:avoid}
.spread>.board{max-width:none;break-inside:avoid}.tally th,.tally td{font-size:8.5pt}h2{font-size:14pt;break-after:avoid}p{max-width:none}
details::details-content{content-visibility:visible;display:block}
details.aside>summary{list-style:none;font-weight:bold}details.steps{break-inside:auto;font-size:8.5pt}.long{break-inside:auto}
details.answer{break-before:page}details.answer .board{max-width:none}details.answer .board::before{content:attr(data-title);font-weight:bold;font-size:14pt}}
)css";

constexpr std::string_view kScript = R"js((() => {
  'use strict';
  // Without this script every scene stands on the page; with it one scene at a time is shown.
  const scenes = [...document.querySelectorAll('section.scene')];
  const links = [...document.querySelectorAll('.contents a')];
  const bar = document.querySelector('.bar');
  const [back, next] = bar.querySelectorAll('button');
  const place = bar.querySelector('output');
  const contents = document.querySelector('.contents');
  let now = 0;

  const numberFrom = (hash) => scenes.findIndex((scene) => '#' + scene.id === hash);

  function show(number, takesFocus) {
    now = Math.min(Math.max(number, 0), scenes.length - 1);
    scenes.forEach((scene, i) => scene.classList.toggle('now', i === now));
    links.forEach((link, i) => (i === now ? link.setAttribute('aria-current', 'step') : link.removeAttribute('aria-current')));
    back.setAttribute('aria-disabled', String(now === 0));
    next.setAttribute('aria-disabled', String(now === scenes.length - 1));
    place.textContent = place.dataset.words.replace('%n', now + 1).replace('%m', scenes.length);
    history.replaceState(null, '', '#' + scenes[now].id);
    if (!takesFocus) return;
    contents.open = false;
    scrollTo(0, 0);
    scenes[now].querySelector('h2').focus({ preventScroll: true });
  }

  const moves = {
    ArrowRight: () => now + 1, PageDown: () => now + 1,
    ArrowLeft: () => now - 1, PageUp: () => now - 1,
    Home: () => 0, End: () => scenes.length - 1,
  };

  document.addEventListener('keydown', (event) => {
    if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return;
    if (event.target.closest('input, textarea, select, [contenteditable]')) return;
    const move = moves[event.key];
    if (!move) return;
    event.preventDefault();
    show(move(), true);
  });
  back.addEventListener('click', () => show(now - 1, false));
  next.addEventListener('click', () => show(now + 1, false));
  addEventListener('hashchange', () => {
    const number = numberFrom(location.hash);
    if (number >= 0) show(number, true);
  });
  // Folded parts belong on paper too.
  let folded = [];
  addEventListener('beforeprint', () => {
    folded = [...document.querySelectorAll('section details:not([open])')];
    folded.forEach((part) => { part.open = true; });
  });
  addEventListener('afterprint', () => folded.forEach((part) => { part.open = false; }));

  // A page opened at a scene starts at its top.
  history.scrollRestoration = 'manual';
  addEventListener('load', () => scrollTo(0, 0));

  document.documentElement.classList.add('stepping');
  bar.hidden = false;
  show(Math.max(numberFrom(location.hash), 0), false);
})();
)js";

}  // namespace

std::string page_style() { return svg_rules(SvgUse::kInline) + std::string(kStyle); }

std::string_view page_script() { return kScript; }

std::string page_style_hash() { return sha256_base64(page_style()); }

std::string page_script_hash() { return sha256_base64(page_script()); }

}  // namespace cp
