// The second window shows what to say. It has no address of its own: this page writes into it and listens to it, so it needs neither
// a file nor a server, however the page came here. `recite` fills it, by a function that finds its places by name.
function notesOf(root, words, { keys, press, recall, recite }) {
  let second = null, running = 0, spent = 0;
  const note = (name) => second.document.querySelector(`.n-${name}`);
  const there = () => { try { return Boolean(second && !second.closed && second.document.getElementById("notes")); } catch { return false; } };
  const tell = () => { if (there()) recite(note); };

  function open(anew = true) {
    if (there()) return second.focus();
    // A window that this page opened before it was loaded anew may be out of its reach: then another takes its place.
    for (const name of anew ? ["unpin-notes", "_blank"] : ["unpin-notes"]) {
      try {
        second = window.open("", name, "popup,width=760,height=720");
        furnish();
        break;
      } catch {
        second?.close();
        second = null;
      }
    }
    root.querySelector(".t-shut").textContent = second || !anew ? "" : words.shut;
    recall("notes", second ? "yes" : "no");
    tell();
  }
  function furnish() {
    const d = second.document, page = document.documentElement, inside = document.getElementById("notes").cloneNode(true);
    inside.hidden = false;
    d.title = document.title;
    d.documentElement.lang = page.lang;
    Object.assign(d.documentElement.dataset, page.dataset);
    d.head.querySelectorAll("style").forEach((e) => e.remove());
    d.head.append(document.querySelector("style").cloneNode(true));
    d.body.className = "noting";
    d.body.replaceChildren(inside);
    note("keys").append(...["back", "next", "ask"].map((name) => root.querySelector(`[data-do="${name}"]`).cloneNode(true)));
    d.onkeydown = keys;
    d.onclick = press;
    note("run").onclick = () => {
      if (running) spent += performance.now() - running;
      running = running ? 0 : performance.now();
      clock();
    };
    note("zero").onclick = () => { spent = 0; running = running && performance.now(); clock(); };
    const mine = second;
    // Loaded anew it is empty; shut, it is not wanted any more.
    second.onpagehide = () => setTimeout(() => {
      if (second !== mine) return;
      try {
        furnish();
        tell();
      } catch {
        mine.close();
        second = null;
        recall("notes", "no");
      }
    }, 300);
    clock();
  }
  function clock() {
    if (!there()) return;
    const s = Math.floor((spent + (running && performance.now() - running)) / 1000);
    note("clock").textContent = [s >= 3600 ? Math.floor(s / 3600) : -1, Math.floor(s / 60) % 60, s % 60].filter((n) => n >= 0).map((n) => String(n).padStart(2, "0")).join(":");
    note("run").textContent = running ? words.pause : words.start;
  }
  setInterval(clock, 250);
  return { open, tell };
}
