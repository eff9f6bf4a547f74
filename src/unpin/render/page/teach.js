// The lesson an idea at a time: what an idea shows is listed in #teach-told and copied from the page; one scene is one figure and what is said.
(() => {
  const root = document.getElementById("teach"), list = document.getElementById("teach-told"), opener = document.getElementById("teach-open");
  if (!root || !list) return;
  const told = JSON.parse(list.textContent), scenes = [], ideas = [], words = told.words;
  if (!told.ideas) return;
  // Scenes and ideas as `teaching._ideas` writes them: what they do not say is as before, a piece that is not named is the next.
  for (const line of told.scenes.split(";")) {
    const [id, figure] = line.split(" "), before = scenes.at(-1);
    scenes.push([id || before[0], figure || before[1]]);
  }
  let most = 0;
  for (const line of told.ideas.split(";")) {
    const { k, s = 0, o = 0, w = 0, f = 0 } = ideas.at(-1) ?? {}, idea = { k, s: [s], o: [o], w: [w], f: [f], p: [most + 1], a: [], l: [], t: [0], q: [0], n: [] };
    for (const word of line.split(" ")) if (/\d/.test(word)) idea[word[0]] = word.slice(1).split(",").map(Number); else idea.k = word || k;
    most = Math.max(most, ...idea.p, ...idea.q, ...idea.n, ...idea.w);
    for (const one of "sowftq") idea[one] = idea[one][0];
    idea.p = idea.p.filter((n) => n >= 0);
    for (const many of "al") idea[many] = idea[many].map((n) => told.ids[n]);
    ideas.push(idea);
  }
  const part = (name) => root.querySelector(`.t-${name}`), stations = [...part("way").children], total = ideas.at(-1).f;
  const board = part("board"), drawn = part("drawn"), said = part("said"), pen = penOf(root, board, part("ink"), () => at);
  const all = (where, what) => [...where.querySelectorAll(what)], make = (tag, props) => Object.assign(document.createElement(tag), props);
  const flag = (el, name, on) => el.classList.toggle(name, Boolean(on));
  const last = ideas.length - 1, chapter = (k) => scenes[ideas[k].s][0], begins = (id) => ideas.findIndex((_, k) => chapter(k) === id);
  let at = 0, asking = false, asks = recall("ask") !== "no", open = false, scene = -1, rows = new Map(), top = 0;

  function recall(name, value) {
    try { return value ? sessionStorage.setItem(name, value) : sessionStorage.getItem(name); } catch { return null; }
  }
  function address(hash) {
    try { history.replaceState(null, "", hash); } catch { /* a page without an address of its own */ }
  }
  function copy(el) {
    const made = el.cloneNode(true);
    for (const e of [made, ...all(made, "*")]) for (const a of ["id", "data-i", "tabindex", "aria-labelledby", "aria-describedby"]) e.removeAttribute(a);
    all(made, ".lit").forEach((e) => e.classList.remove("lit"));
    return made;
  }
  const words_of = (n) => found(n).flatMap((el) => [...copy(el).childNodes]);
  const found = (n) => all(document, `body > :not(#teach):not(#notes) [data-i="${n}"]`);
  /** Copies of a piece as they stand on a board. */
  function pieces(n) {
    return found(n).map((el) => {
      const made = copy(el);
      if (el.localName !== "li") return made;
      const inside = make(el.closest("#teach-own") ? "p" : "ul");
      if (inside.localName === "ul") inside.append(made); else inside.append(...made.childNodes);
      return inside;
    });
  }

  // The board of a scene: everything it will hold, so that its type has one size from the first idea to the last.
  function build(s) {
    scene = s;
    rows = new Map();
    said.replaceChildren();
    drawn.replaceChildren();
    const figure = scenes[s][1], svg = document.getElementById(figure)?.querySelector("svg");
    if (svg) {
      const made = copy(svg);
      made.setAttribute("aria-label", svg.querySelector("title")?.textContent ?? "");
      all(made, "title, desc").forEach((e) => e.remove());
      drawn.append(made);
    }
    let sheet = null;
    ideas.forEach((idea, k) => {
      if (idea.s !== s) return;
      if (idea.q) {
        // A question stands where its answer will come.
        const p = make("p", { className: "ask yet" });
        p.dataset.at = k;
        p.append(...words_of(idea.q));
        said.append(p);
        sheet = null;
      }
      for (const n of idea.p) {
        if (rows.has(n)) continue;
        const made = pieces(n);
        for (const el of made) {
          if (el.classList.contains("row")) {
            if (!sheet) said.append(sheet = make("div", { className: "working" }));
            sheet.append(el);
          } else {
            sheet = null;
            said.append(el);
          }
        }
        rows.set(n, { made, from: k });
      }
    });
    flag(board, "drawn", svg);
    flag(board, "bare", svg && !said.children.length);
    fit();
  }

  // Figure and words as large as the window allows. Where words would be too small to be read from the back row, the figure gives way.
  function fit() {
    const wide = board.clientWidth, high = board.clientHeight, svg = drawn.firstElementChild, upright = innerWidth < 0.9 * innerHeight;
    const big = Math.max(17, Math.min(wide / (upright ? 24 : 34), high / 15)), least = Math.max(15, innerHeight * (upright ? 0.018 : 0.027));
    // The fullest this board will be: everything said, or what is said before a question and the question.
    const asked = [-1, ...all(said, ".ask").map((p) => Number(p.dataset.at))];
    const full = (k) => {
      stand(k < 0 ? last : k - 1, k);
      return said.scrollHeight > said.clientHeight + 1 || said.scrollWidth > said.clientWidth + 1;
    };
    for (let share = 1; ; share *= 0.85) {
      if (svg) size(svg, share, wide, high, big, upright);
      for (let em = big; ; em *= 0.95) {
        const smallest = em <= (share < 0.5 || !svg ? 15 : least);
        said.style.fontSize = `${Math.max(em, 15).toFixed(1)}px`;
        const fits = !asked.some(full);
        if (fits || smallest && (share < 0.5 || !svg)) return;
        if (smallest) break;
      }
    }
  }
  /** The share of a figure follows from its shape alone, so that it stays where it is while sums come and go beside it. */
  function size(svg, share, wide, high, big, upright) {
    const box = svg.viewBox.baseVal, shape = box.width / box.height, bare = board.classList.contains("bare"), over = upright || shape > 2.1 && box.width < 400;
    const room = bare ? [wide, high] : !upright && box.width > 300 ? [wide * 0.62, high] : over ? [wide, high * (upright && shape < 1 ? 0.5 : 0.44)] : [wide * (shape > 1.3 ? 0.52 : 0.46), high];
    const scale = share * Math.min((room[0] - 4) / box.width, (room[1] - 4) / box.height, (big * 1.25) / 9);
    svg.setAttribute("width", box.width * scale);
    svg.setAttribute("height", box.height * scale);
    flag(board, "over", over);
    board.style.setProperty("--figure", `${Math.ceil(over ? box.height * scale : Math.max(box.width * scale, share * wide * 0.3)) + 4}px`);
  }

  /** What is said up to an idea stands there, and the question before another. */
  function stand(until, question = -1) {
    for (const { made, from } of rows.values()) made.forEach((el) => flag(el, "yet", from > until));
    all(said, ".ask").forEach((e) => flag(e, "yet", Number(e.dataset.at) !== question));
    all(said, ":scope > .working").forEach((w) => flag(w, "yet", ![...w.children].some((r) => !r.classList.contains("yet"))));
  }

  // What stands on the board at an idea, or while it is asked for: then it is not shown yet.
  function show(n, ask = false) {
    at = Math.max(0, Math.min(last, n));
    const idea = ideas[at], until = ask && asks && idea.q ? at - 1 : at;
    asking = until < at;
    // What stands above the board first: it takes room from it.
    part("step").replaceChildren(...where(idea));
    part("found").replaceChildren(...tally(until < 0 ? 0 : ideas[until].f));
    if (scene !== idea.s) build(idea.s);
    stand(until, asking ? at : -1);
    const here = (k) => ideas[k].s === idea.s && k <= until;
    for (const [n, { made }] of rows) {
      made.forEach((el) => flag(el, "now", !asking && idea.p.includes(n)));
      let terms = 0, whole = false;
      ideas.forEach((i, k) => { if (here(k) && i.p.includes(n)) i.t ? terms = Math.max(terms, i.t) : whole = true; });
      made[0]?.querySelectorAll(":scope > .line > math").forEach((m, k) => flag(m, "unwritten", !whole && k >= terms));
    }
    figure(idea, until);
    light();
    const newest = all(said, ".now, .ask:not(.yet)").pop();
    if (newest) newest.scrollIntoView({ block: "nearest" }); else said.scrollTop = 0;
    said.tabIndex = said.scrollHeight > said.clientHeight + 1 ? 0 : -1;
    stations.forEach((li, k) => k === idea.o ? li.setAttribute("aria-current", "step") : li.removeAttribute("aria-current"));
    part("go").value = String(begins(chapter(at)));
    buttons(document);
    pen.draw();
    speak(idea);
    address(`#teach-${at + 1}${asking ? "-ask" : ""}`);
    beside.tell();
  }
  function buttons(where) {
    for (const b of all(where, "[data-do]")) {
      const name = b.dataset.do;
      if (name === "back") b.disabled = at === 0 && (asking || !ideas[at].q || !asks);
      if (name === "next") {
        b.disabled = at === last && !asking;
        b.textContent = at === told.end - 1 && at < last && !asking ? words.more : words.next;
      }
      if (name === "ask") b.setAttribute("aria-pressed", asks);
    }
  }
  /** The sum in hand and what this idea does with it, in words. */
  function where(idea) {
    const now = words.now[asking ? "asking" : idea.t ? "write" : idea.k] ?? "";
    return idea.w ? [...words_of(idea.w), now && `: ${now}`] : [now];
  }
  /** A stroke for each unknown of this way, thick once it is found. */
  function tally(n) {
    if (!total) return [];
    const strokes = make("span", { className: "t-tally" });
    strokes.append(...Array.from({ length: total }, (_, k) => make("i", { className: k < n ? "got" : "" })));
    return [make("span", { textContent: words.found.replace("{n}", n).replace("{total}", total) }), strokes];
  }

  // Arrows that come later are not there yet, nor what measures them.
  function figure(idea, until) {
    const svg = drawn.firstElementChild, name = scenes[idea.s][1];
    if (!svg) return;
    const every = new Set(), shown = new Set();
    ideas.forEach((i, k) => {
      if (scenes[i.s][1] !== name) return;
      for (const a of i.a) { every.add(a); if (k <= until && (!a.startsWith("~ring ") || i.s === idea.s)) shown.add(a); }
    });
    // While a class is asked what acts across, the arrow over there would be the answer.
    const asked = new Set(asking && idea.k === "pair" ? idea.l.filter((a) => !(ideas[at - 1]?.l ?? []).includes(a)) : []);
    let later = 0;
    for (const el of svg.children) {
      const is = (...names) => names.some((c) => el.classList.contains(c)), of = el.getAttribute("data-action") ?? el.getAttribute("data-of");
      let yet = of !== null && (every.has(of) && !shown.has(of) || asked.has(of));
      if (of === null && (is("dimension", "extension", "head") || is("leader") && el.nextElementSibling?.classList.contains("dimension"))) yet = every.has("~arms") && !shown.has("~arms");
      const centre = is("centre") ? el.getAttribute("data-owner") : /^centre( \d+)?$/.test(of) ? of : null;
      if (centre !== null) yet = !shown.has(`~ring ${centre}`);
      flag(el, "yet", yet);
      later += yet;
    }
    if (later) svg.removeAttribute("aria-describedby"); else svg.setAttribute("aria-describedby", `${name}-told`);
  }

  // The newest words and the arrows they speak of light up together.
  function light(only) {
    const lit = new Set(only ?? (asking ? [] : ideas[at].l)), now = said.querySelector(".row.now");
    for (const g of all(drawn, "g[data-action]")) flag(g, "lit", lit.has(g.getAttribute("data-action")));
    const maths = [...(now?.querySelectorAll(":scope > .line > math") ?? [])].filter((m) => !m.classList.contains("unwritten"));
    const count = Math.max(0, ...ideas.filter((i) => ideas[at].p.some((p) => i.s === scene && i.p.includes(p))).map((i) => i.t ?? 0));
    const written = count ? maths[ideas[at].t ? ideas[at].t - 1 : count] : null;
    for (const t of all(said, ".term")) flag(t, "lit", lit.has(t.dataset.action) && (only || now?.contains(t) && (!written || written.contains(t))));
  }

  function speak(idea) {
    const live = part("live");
    live.replaceChildren();
    if (asking) live.append(...words_of(idea.q));
    else if (idea.t) live.textContent = all(drawn, "g.lit").map((g) => g.getAttribute("aria-label")).join(", ");
    else for (const n of idea.p) for (const el of pieces(n)) {
      const line = el.querySelector(".line[aria-label]");
      live.append(line ? `${line.getAttribute("aria-label")} ` : el);
    }
  }

  const next = () => asking ? show(at) : at < last && show(at + 1, true);
  const back = () => asking ? at > 0 && show(at - 1) : asks && ideas[at].q ? show(at, true) : at > 0 && show(at - 1);
  const acts = {
    next, back, first: () => show(0), last: () => show(told.end - 1), more: () => told.end <= last && show(told.end),
    ask() { asks = !asks; recall("ask", asks ? "yes" : "no"); show(at, asking); },
    pen: () => pen.take("ink"), erase: () => pen.take("erase"), clear: () => pen.clear(),
    second: () => beside.open(), leave: () => close(),
  };

  function start(n, ask) {
    if (!open) {
      open = true;
      top = scrollY;
      root.hidden = false;
      pen.hold("");
      document.body.classList.add("teaching");
      scene = -1;
      root.focus({ preventScroll: true });
    }
    show(n, ask);
  }
  function close() {
    if (!open) return;
    open = false;
    pen.hold("");
    root.hidden = true;
    document.body.classList.remove("teaching");
    address(location.pathname.startsWith("/") && location.protocol.startsWith("http") ? location.pathname + location.search : "#");
    scrollTo(0, top);
    opener.focus({ preventScroll: true });
  }
  function follow() {
    const here = /^#teach(?:-(\d+))?(-ask)?$/.exec(location.hash);
    if (here) start((here[1] ?? 1) - 1, Boolean(here[2])); else close();
  }

  // Keys, tap and swipe.
  const KEYS = { ArrowRight: "next", ArrowDown: "next", PageDown: "next", " ": "next", Enter: "next", ArrowLeft: "back", ArrowUp: "back", PageUp: "back",
    Backspace: "back", Home: "first", End: "last", Escape: "leave", q: "ask", p: "pen", e: "erase", c: "clear", n: "second", w: "more" };
  function act(e) {
    if (e.ctrlKey || e.metaKey || e.altKey || e.target.closest?.("select")) return "";
    if ((e.key === " " || e.key === "Enter") && e.target.closest?.("button")) return "";
    return e.shiftKey && e.key === " " ? "back" : KEYS[e.key.length === 1 ? e.key.toLowerCase() : e.key] ?? "";
  }
  function keys(e) {
    const there = e.currentTarget !== document, name = open ? act(e) : "";
    if (!name || there && ["leave", "second"].includes(name)) return;
    e.preventDefault();
    if (name === "leave" && pen.held()) pen.hold(""); else acts[name]();
  }
  const press = (e) => acts[e.target.closest?.("[data-do]")?.dataset.do]?.();
  document.addEventListener("keydown", keys);
  document.addEventListener("click", press);
  let down = null;
  board.addEventListener("pointerdown", (e) => { down = pen.held() || e.button ? null : [e.clientX, e.clientY]; });
  board.addEventListener("pointercancel", () => { down = null; });
  board.addEventListener("pointerup", (e) => {
    if (!down || pen.held()) return;
    const [x, y] = [e.clientX - down[0], e.clientY - down[1]];
    down = null;
    if (Math.abs(x) > 50 && Math.abs(x) > 1.5 * Math.abs(y)) return x < 0 ? next() : back();
    if (Math.hypot(x, y) < 8 && getSelection().isCollapsed) e.clientX < innerWidth / 2 ? back() : next();
  });
  for (const [kind, on] of [["pointerover", true], ["pointerout", false]]) board.addEventListener(kind, (e) => {
    const over = e.target.closest?.("[data-action]");
    if (over && e.pointerType === "mouse") light(on ? [over.getAttribute("data-action")] : undefined);
  });
  part("go").addEventListener("change", (e) => { show(Number(e.target.value)); root.focus(); });
  for (const id of new Set(scenes.map((s) => s[0]))) part("go").append(new Option(document.querySelector(`#${CSS.escape(id)} > h2`)?.textContent ?? id, begins(id)));
  addEventListener("resize", () => { if (open) { build(ideas[at].s); show(at, asking); } });

  // What the second window shows: the step in hand, what is said to it, and what comes then.
  function recite(note) {
    const idea = ideas[at], after = asking ? idea : ideas[at + 1], end = asking ? at : at + 1;
    note("step").replaceChildren(...where(idea));
    note("found").replaceChildren(...tally(idea.f));
    note("pane").scrollTop = 0;
    note("cue").textContent = asking ? words.asked : words.cue[idea.t ? "write" : idea.k] ?? "";
    note("now").replaceChildren(...(asking ? [idea.q] : [...idea.p, ...idea.n]).flatMap(pieces));
    const then = !after || end === told.end ? [words.end] : after.q && asks && !asking ? pieces(after.q) : after.p.flatMap(pieces);
    note("then").replaceChildren(...then);
    buttons(note("keys"));
  }
  const beside = notesOf(root, words, { keys, press, recall, recite });
  opener.hidden = false;
  opener.addEventListener("click", () => start(at, false));
  addEventListener("hashchange", follow);
  if (/^#teach/.test(location.hash)) document.fonts.ready.then(() => { follow(); if (recall("notes") === "yes") beside.open(false); });
})();
