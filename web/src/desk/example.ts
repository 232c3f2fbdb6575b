// SPDX-License-Identifier: Apache-2.0
// The bundled puzzle (data/demo.txt).
export const example = { title: 'The ring', puzzle: '65.....4324.....86..3..........9......2.63..5...8.2........8...72.....9198..4..57' };
