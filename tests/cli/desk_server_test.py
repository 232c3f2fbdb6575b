# SPDX-License-Identifier: Apache-2.0
"""The page server: only this machine, only GET and HEAD, only the files of the page, and within bounds whatever is sent."""

import base64
import hashlib
import json
import os
import re
import signal
import socket
import subprocess
import threading
import time
import unittest

from program import BIN, SOURCE, Case, Run

PAGE = "<!doctype html><title>Desk</title>"
SCRIPT = "console.log('desk');\n" * 2000
LESSON = "counterpoise lesson 1\ntitle: The ring\npuzzle: ..3.1......4.1..\n\n== First\nWords.\n"


class Answer:
    def __init__(self, raw):
        head, _, self.body = raw.partition(b"\r\n\r\n")
        lines = head.decode().split("\r\n")
        self.status = int(lines[0].split()[1]) if raw else 0
        self.headers = {line.split(":", 1)[0].lower(): line.split(":", 1)[1].strip() for line in lines[1:]}


class DeskServerTest(Case):
    def setUp(self):
        super().setUp()
        self.path("index.html", PAGE)
        self.path("desk.js", SCRIPT)
        self.path("notes.txt", "not part of the page")
        os.mkdir(self.path("inner"))
        self.path("inner/secret.html", "secret")
        self.server = self.start("--port", "0")

    def start(self, *words):
        server = subprocess.Popen([BIN, "desk", "--no-open", "--folder", self.folder, *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        self.addCleanup(self.end, server)
        line = server.stdout.readline().decode()
        self.assertRegex(line, r"^The desk is at http://127\.0\.0\.1:\d+/ ")
        server.port = int(re.search(r":(\d+)/", line).group(1))
        return server

    def end(self, server):
        if server.poll() is None:
            server.send_signal(signal.SIGTERM)
        server.wait(timeout=20)
        server.stdout.close()
        server.stderr.close()

    def connect(self):
        return socket.create_connection(("127.0.0.1", self.server.port), timeout=20)

    def send(self, raw):
        """Everything that comes back until the server closes."""
        with self.connect() as link:
            try:
                link.sendall(raw.encode("latin-1") if isinstance(raw, str) else raw)
            except (BrokenPipeError, ConnectionResetError):
                pass  # it had heard enough
            parts = []
            try:
                while part := link.recv(65536):
                    parts.append(part)
            except ConnectionResetError:
                pass
        return Answer(b"".join(parts))

    def get(self, path="/", *headers, method="GET", host=None):
        host = host or f"127.0.0.1:{self.server.port}"
        return self.send("\r\n".join([f"{method} {path} HTTP/1.1", f"Host: {host}", *headers, "", ""]))

    def still_serves(self):
        self.assertEqual(self.get().status, 200)

    def test_the_page_is_served_with_its_guards(self):
        answer = self.get()
        self.assertEqual((answer.status, answer.body.decode()), (200, PAGE))
        self.assertEqual(answer.headers["content-type"], "text/html; charset=utf-8")
        self.assertEqual(answer.headers["x-content-type-options"], "nosniff")
        policy = answer.headers["content-security-policy"]
        for part in ("default-src 'none'", "script-src 'self' 'wasm-unsafe-eval'", "frame-ancestors 'none'", "base-uri 'none'"):
            self.assertIn(part, policy)
        self.assertNotIn("unsafe-inline", policy)
        self.assertNotIn("'unsafe-eval'", policy)
        script = self.get("/desk.js?v=1")
        self.assertEqual((script.status, script.body.decode()), (200, SCRIPT))
        self.assertEqual(script.headers["content-type"], "text/javascript; charset=utf-8")
        self.assertEqual(self.get("/", host=f"localhost:{self.server.port}").status, 200)

    def test_the_server_is_as_strict_as_the_page_itself(self):
        with open(os.path.join(SOURCE, "web/index.html")) as file:
            own = re.search(r'http-equiv="Content-Security-Policy" content="([^"]+)"', file.read()).group(1)
        policy = self.get().headers["content-security-policy"]
        self.assertEqual(policy, own + "; frame-ancestors 'none'")

    def test_head_has_no_body(self):
        answer = self.get("/desk.js", method="HEAD")
        self.assertEqual((answer.status, answer.body), (200, b""))
        self.assertEqual(int(answer.headers["content-length"]), len(SCRIPT))

    def test_another_host_is_refused(self):
        for host in ("example.org", f"example.org:{self.server.port}", "127.0.0.1", f"127.0.0.1:{self.server.port}.example.org", f"127.0.0.2:{self.server.port}"):
            self.assertEqual(self.get(host=host).status, 421, host)
        self.assertEqual(self.send("GET / HTTP/1.1\r\n\r\n").status, 400)
        self.assertEqual(self.get("/", f"Host: 127.0.0.1:{self.server.port}").status, 400)

    def test_another_origin_is_refused(self):
        for origin in ("http://example.org", "null", "https://127.0.0.1:%d" % self.server.port, "http://127.0.0.1:1"):
            self.assertEqual(self.get("/", f"Origin: {origin}").status, 403, origin)
        self.assertEqual(self.get("/", f"Origin: http://127.0.0.1:{self.server.port}").status, 200)

    def test_no_path_leads_out_of_the_page(self):
        for path in ("/../index.html", "/inner/secret.html", "/inner/../index.html", "/%2e%2e/index.html", "/..%2findex.html", "//index.html", "/./index.html",
                     "/notes.txt", "/index.html/", "/INDEX.HTML", "/etc/passwd", "/\\..\\index.html", "/index.html%00", "/favicon.ico"):
            self.assertEqual(self.get(path).status, 404, path)
        for path in ("index.html", "http://127.0.0.1/", "*"):
            self.assertEqual(self.get(path).status, 400, path)

    def test_only_get_and_head(self):
        for method in ("POST", "PUT", "DELETE", "OPTIONS", "TRACE", "get"):
            answer = self.get("/", "Content-Length: 0", method=method)
            self.assertEqual(answer.status, 405, method)
            self.assertEqual(answer.headers["allow"], "GET, HEAD")

    def test_bodies_are_refused(self):
        self.assertEqual(self.get("/", "Content-Length: 5", method="POST").status, 413)
        self.assertEqual(self.get("/", "Content-Length: 99999999999999999999").status, 413)
        self.assertEqual(self.get("/", "Transfer-Encoding: chunked", method="POST").status, 411)
        self.assertEqual(self.send(f"POST / HTTP/1.1\r\nHost: 127.0.0.1:{self.server.port}\r\nTransfer-Encoding: chunked\r\n\r\n" + "ffff\r\n" + "x" * 65535).status, 411)
        self.still_serves()

    def test_nonsense_is_refused(self):
        for raw in ("\r\n\r\n", "GET\r\n\r\n", "GET / HTTP/2.0\r\nHost: x\r\n\r\n", "GET  / HTTP/1.1\r\n\r\n", "GET / HTTP/1.1\r\nNo colon\r\n\r\n",
                    "GET / HTTP/1.1\r\n: nameless\r\n\r\n", "GET / HTTP/1.1\r\nHost : x\r\n\r\n", "\0\xff\xfe\r\n\r\n"):
            self.assertEqual(self.send(raw).status, 400, raw)
        self.still_serves()

    def test_a_huge_head_is_refused(self):
        self.assertEqual(self.get("/", "X-Long: " + "x" * 20_000).status, 431)
        self.assertEqual(self.get("/", *["X-Many: 1"] * 2_000).status, 431)
        self.assertEqual(self.get("/" + "x" * 20_000).status, 431)
        self.assertEqual(self.send(b"x" * 2_000_000).status, 431)
        self.still_serves()

    def test_one_request_a_connection(self):
        wanted = f"GET / HTTP/1.1\r\nHost: 127.0.0.1:{self.server.port}\r\nConnection: keep-alive\r\n\r\n"
        answer = self.send(wanted * 50)
        self.assertEqual(answer.status, 200)
        self.assertEqual(answer.headers["connection"], "close")
        self.assertEqual(answer.body.decode(), PAGE)

    def test_a_flood_of_silent_connections_keeps_nobody_out(self):
        links = [self.connect() for _ in range(150)]
        try:
            for link in links[::3]:
                try:
                    link.sendall(b"GET / HT")
                except OSError:
                    pass  # pushed out already
            self.still_serves()
            open_files = len(os.listdir(f"/proc/{self.server.pid}/fd"))
            self.assertLess(open_files, 70)
        finally:
            for link in links:
                link.close()
        self.still_serves()

    def test_a_slow_asker_is_sent_away(self):
        with self.connect() as link:
            link.sendall(b"GET / HTTP/1.1\r\n")
            began = time.monotonic()
            answer = Answer(link.recv(65536))
        self.assertEqual(answer.status, 408)
        self.assertLess(time.monotonic() - began, 20)

    def test_many_at_once(self):
        statuses = []
        askers = [threading.Thread(target=lambda: statuses.append(self.get("/desk.js").body == SCRIPT.encode())) for _ in range(30)]
        for asker in askers:
            asker.start()
        for asker in askers:
            asker.join()
        self.assertEqual(statuses, [True] * 30)

    def test_only_the_loopback_address_listens(self):
        hexport = f"{self.server.port:04X}"
        with open("/proc/net/tcp") as table:
            ours = [line.split()[1] for line in table if line.split()[1].endswith(":" + hexport) and line.split()[3] == "0A"]
        self.assertEqual(ours, ["0100007F:" + hexport])
        with open("/proc/net/tcp6") as table:
            self.assertNotIn(":" + hexport + " ", "".join(line for line in table if " 0A " in line))

    # --- with a folder of lessons

    def shelf(self, *, only=None):
        os.makedirs(self.path("shelf/inner"), exist_ok=True)
        self.path("shelf/ring.lesson", LESSON)
        self.path("shelf/other.txt", "mine")
        self.path("shelf/inner/deep.lesson", LESSON)
        os.symlink(self.path("shelf/other.txt"), self.path("shelf/link.lesson"))
        self.server = self.start("--port", "0", "--lessons", self.path("shelf/" + only) if only else self.path("shelf"))

    def text(self, name):
        with open(self.path(name)) as file:
            return file.read()

    def put(self, name, text, *headers, origin=True):
        ours = [f"Origin: http://127.0.0.1:{self.server.port}"] if origin else []
        head = "\r\n".join([f"PUT /lessons/{name} HTTP/1.1", f"Host: 127.0.0.1:{self.server.port}", *ours, f"Content-Length: {len(text.encode())}", *headers, "", ""])
        return self.send(head.encode() + text.encode())

    def test_lessons_are_listed_and_read(self):
        self.shelf()
        listed = json.loads(self.get("/lessons").body)
        self.assertEqual([entry["name"] for entry in listed["lessons"]], ["ring.lesson"])
        self.assertEqual(listed["lessons"][0]["title"], "The ring")
        answer = self.get("/lessons/ring.lesson")
        self.assertEqual((answer.status, answer.body.decode()), (200, LESSON))
        # RFC 9110, section 8.8.3: a tag is quoted; ours is the SHA-256 of the text.
        digest = base64.b64encode(hashlib.sha256(LESSON.encode()).digest()).decode()
        self.assertEqual(answer.headers["etag"], f'"{digest}"')
        self.assertEqual(listed["lessons"][0]["revision"], digest)

    def test_a_lesson_is_written_over_the_revision_that_was_read(self):
        self.shelf()
        tag = self.get("/lessons/ring.lesson").headers["etag"]
        written = self.put("ring.lesson", LESSON + "% more\n", f"If-Match: {tag}")
        self.assertEqual(written.status, 200)
        self.assertEqual(self.text("shelf/ring.lesson"), LESSON + "% more\n")
        again = self.put("ring.lesson", "mine", f"If-Match: {tag}")
        self.assertEqual((again.status, again.headers["etag"]), (412, written.headers["etag"]))
        self.assertEqual(self.text("shelf/ring.lesson"), LESSON + "% more\n")
        self.assertEqual(self.put("ring.lesson", "mine", "If-None-Match: *").status, 412)
        self.assertEqual(self.put("ring.lesson", "mine").status, 428)
        self.assertEqual(self.put("new%20one.lesson", LESSON, "If-None-Match: *").status, 201)
        self.assertEqual(self.text("shelf/new one.lesson"), LESSON)
        self.assertEqual([name for name in os.listdir(self.path("shelf")) if name.startswith(".")], [], "nothing half-written stays")

    def test_nothing_else_is_read_or_written(self):
        self.shelf()
        for name in ("../desk.js", "..%2fring.lesson", "inner/deep.lesson", "inner%2Fdeep.lesson", "other.txt", ".lesson", ".hidden.lesson", "%00.lesson", "%zz.lesson", "link.lesson", "x" * 200 + ".lesson"):
            self.assertIn(self.get("/lessons/" + name).status, (400, 404), name)
            self.assertIn(self.put(name, "mine", "If-None-Match: *").status, (400, 404, 412), name)
        # What the door cannot read has no tag that it could be written over with.
        for name in ("link.lesson", "absent.lesson"):
            self.assertEqual(self.put(name, "mine", 'If-Match: ""').status, 412, name)
        self.assertFalse(os.path.exists(self.path("shelf/absent.lesson")))
        self.assertTrue(os.path.islink(self.path("shelf/link.lesson")))
        self.assertEqual(self.put("a.lesson", "x", "If-None-Match: *", origin=False).status, 403)
        self.assertEqual(sorted(os.listdir(self.path("shelf"))), ["inner", "link.lesson", "other.txt", "ring.lesson"])
        self.assertEqual(self.text("shelf/other.txt"), "mine")
        self.assertEqual(self.get("/lessons", "Content-Length: 0", f"Origin: http://127.0.0.1:{self.server.port}", method="PUT").status, 405)
        self.still_serves()

    def test_one_lesson_alone(self):
        self.shelf(only="ring.lesson")
        self.assertEqual(len(json.loads(self.get("/lessons").body)["lessons"]), 1)
        self.assertEqual(self.put("new.lesson", LESSON, "If-None-Match: *").status, 404)
        self.ends(Run("desk", "--no-open", "--folder", self.folder, "--lessons", self.path("shelf/nowhere")), 64, "neither a folder nor a lesson", "hint: ")

    def test_a_taken_port(self):
        taken = Run("desk", "--no-open", "--folder", self.folder, "--port", str(self.server.port))
        self.ends(taken, 64, f"port {self.server.port} is taken", "hint: ")

    def test_the_usual_port_gives_way_to_the_next(self):
        first, second = self.start(), self.start()
        self.assertNotEqual(first.port, second.port)
        self.assertIn(second.port, range(27381, 27391))
        second.send_signal(signal.SIGTERM)
        self.assertIn(f"this one uses {second.port}", second.stderr.read().decode())

    def test_it_stops_cleanly(self):
        for sign in (signal.SIGINT, signal.SIGTERM):
            server = self.start("--port", "0")
            server.send_signal(sign)
            self.assertEqual(server.wait(timeout=20), 0)
            self.assertEqual(server.stderr.read(), b"")

    def test_a_folder_without_a_page(self):
        self.ends(Run("desk", "--no-open", "--folder", self.path("inner")), 64, "index.html is missing", "hint: ")
        self.ends(Run("desk", "--no-open", "--folder", "nowhere"), 64, "there is no page in 'nowhere'")
        self.ends(Run("desk", "--port", "70000"), 64, "70000")


if __name__ == "__main__":
    unittest.main()
