/**
 * The records that pass between the modules of the page; no code.
 *
 * @typedef {[number, number]} Spot
 * @typedef {[number, number]} Span code points
 * @typedef {import("./kernels/view.js").View} View
 * @typedef {import("./kernels/history.js").History} History
 *
 * @typedef {{id: string, axis: "x" | "y" | "along" | "radius", ends: [string, string], shown: string, box: [number, number, number, number], lines: [Spot, Spot][]}} Length pt; between two points, by their names
 * @typedef {{svg: string, scale: number, origin: Spot, size: Spot, lengths?: Length[]}} Figure pt; svg x = scale X, y = -scale Y
 * @typedef {{severity: string, line: number, column: number, span: Span | null, path: string, sentence: string, hint: string}} Fault
 * @typedef {{name: string, at: Spot, shown: [string, string], span: Span, made?: boolean}} Point
 * @typedef {{id: string, what: string, kind: string, section: string, key: string, name: string, points: string[], phrase: string, span: Span | null, says: string, draws: string[], part?: string | null, angle?: number | null, still?: string}} Thing still: why a hand cannot turn it
 * @typedef {{asked: string, asked_plain: string, lines: {formula: string, plain: string, sense: string, arrow: string}[], found: boolean}} Answer html
 * @typedef {{name: string, kind: string, title: string, point: string | null, points: string[]}} Body
 * @typedef {{solvable: boolean, determinate: boolean, freedoms: number, kind: string, summary: string, sentences: {role: string, html: string}[]}} Verdict
 * @typedef {{section: string, name: string | null, phrase: string, blanks: Span[], means: string, form: string, sets?: boolean, renames?: "name" | "swap", drops?: string, pins?: [string, string], acts?: object[]}} Saying pins: the members that its acts would pin
 * @typedef {{insert: string, means: string, phrase?: string, span?: Span}} Option what may come next, or the whole phrase with another direction
 * @typedef {{sentence: string, hint: string, example: string}} Complaint
 * @typedef {Record<string, [number, number, number]>} Twists
 *
 * @typedef {object} Look
 * @property {boolean} sound @property {boolean} drawn @property {boolean} [broken] the YAML breaks off @property {number} since @property {Fault[]} diagnostics
 * @property {Figure | null} [figure] @property {Point[]} [points] @property {Thing[]} [things] @property {string} title
 * @property {{name: string, phrase: string, span: Span}[]} [letters]
 * @property {{length: string, per_metre: number}} [unit] @property {Verdict | null} [verdict] @property {Answer[]} [answers] @property {string[]} [route] the sums of the file's own way @property {string[]} [notices] what the results make a teacher notice @property {Body[]} [bodies]
 * @property {(Figure & {twists: Twists, told: string}) | null} [motion] @property {Figure | null} [apart] @property {Figure | null} [final]
 *
 * @typedef {{sum: string, header: string, holds: string[], holds_ids: string[], left_ids: string[], drops_ids: string[], leaves: string, about: string | null, along: string | null, at: Spot | null}} Choice
 * @typedef {{id: string, name: string, known: boolean, owner: string[]}} Unknown
 * @typedef {{key: string, bodies: string[], title: string, figure: Figure, describe: string[], choices: Choice[], unknowns: Unknown[]}} Pulled
 * @typedef {{lesson: string, known: {id: string, name: string, value: string}[], steps: {sum: string, same: string, ok: boolean, remark: string}[], done: boolean, count: number, missing: string[], answers: Answer[]}} Hand
 *
 * @typedef {{name: string, stamp: string | null, onDisk: string}} Doc
 * @typedef {{text: string, stamp: string | null, why: "changed" | "draft"}} Clash
 * @typedef {{href: string, size: Spot, lay: import("./kernels/tracing.js").Lay, faded: number, marks: {pixel: Spot, metres: Spot | null}[], marking: boolean}} Trace
 * @typedef {{sums: string[], hand: Hand | null, shown: string, job: string, claim: string, bad: string, filed: string[]}} Route `filed`: the way that stood in the file when it was last looked at
 * @typedef {{name: string, files: {name: string, title: string}[], examples: {name: string, title: string}[]}} Folder
 *
 * @typedef {object} State
 * @property {"state" | "apart" | "solve" | "teach" | "hand-out"} act
 * @property {Folder | null} folder @property {Doc | null} doc @property {History} history
 * @property {Look | null} look the latest reply about the text @property {Look | null} drawn the latest reply that had a figure
 * @property {View} view @property {number | null} scale pt a metre asked of the engine, null for its own choice
 * @property {boolean} fitted whether the figure fills the window until somebody moves it @property {Spot} window pixels of the sheet @property {Spot | null} cross where the keyboard points, metres @property {Spot | null} near pointer, pixels @property {{at: Spot, shown: string} | null} landing where what the hand holds would land, metres, and as the file would write it @property {string} hover id of what a press would touch
 * @property {string[]} touched ids @property {boolean} held taken hold of by a press of its own: dragging moves it, where a stroke begins at anything else @property {string} draft what is typed in the sentence @property {string | null} called what is typed as another name @property {Complaint | null} fault why what is typed is not understood @property {"new" | "phrase"} role a new sentence, or the phrase of what is touched
 * @property {Span | null} blank to be selected in it @property {Span[]} blanks those after it
 * @property {Saying[]} sayings @property {number} chosen which of them @property {Option[]} options
 * @property {{id: string, phrase: string, draft: string, letter: string} | null} length one that is typed over in place
 * @property {Spot[]} stroke the stroke being drawn, pixels @property {string} notice @property {string} word the last thing that is spoken aloud
 * @property {Clash | null} clash @property {number} redraw counts drawings put back as they were
 * @property {"saved" | "saving" | "unsaved" | "offline"} kept
 * @property {boolean} script @property {boolean} keys @property {boolean} moving @property {number} freedom @property {"auto" | "light" | "dark"} theme
 * @property {Trace | null} trace @property {boolean} tracing whether its strip is open
 * @property {Pulled[]} pulled @property {string} centre what is pointed at: id of a choice @property {Route} route
 * @property {{ending: string, short: boolean, fade: number, route: string, body: string[], figures: number, language: string, colours: string, beneath: boolean, which: string, page: number, pages: number, preview: {type: string, url: string, text: string} | null, busy: boolean, saved: string}} hand
 */
export {};
