// The keyboard, the player and the chosen words. What is changed, and what it looks like, is the server's to say.
"use strict";

const at = document.body.dataset.at;
const find = (id) => document.getElementById(id);
const player = find("player");
const lines = () => [...document.querySelectorAll("#notes [data-note]")];

// One thing after another: what is pressed faster than the answers come is done to the card that they bring.
let last = Promise.resolve();
const then = (deed) => { last = last.then(deed).catch((error) => say(String(error))); };
const ask = async (verb, path, values = {}) => {
  const slow = setTimeout(() => say("The recording is listened to again: this takes a while …"), 1000);
  await htmx.ajax(verb, at + path, {
    target: "#card", swap: "innerHTML", values: { seen: find("far").dataset.seen, ...values },
  });
  clearTimeout(slow);
  settle();
};
const edit = (values) => ask("POST", "/edit", { id: held(), ...values });

const held = () => find("card").firstElementChild?.dataset.note ?? "";
const say = (words) => { find("told").firstElementChild.textContent = words; };

// After each answer: show in the talk and in the list which note is at hand.
let shown = "";
const settle = () => {
  for (const old of document.querySelectorAll("mark.held")) old.classList.remove("held");
  for (const old of document.querySelectorAll("[aria-current]")) {
    old.removeAttribute("aria-current");
    old.tabIndex = -1;
  }
  const id = held();
  const line = id && find("n-" + id);
  if (line) {
    line.setAttribute("aria-current", "true");
    line.tabIndex = 0;
    if (id !== shown) line.scrollIntoView({ block: "nearest" });
  } else if (lines()[0]) lines()[0].tabIndex = 0;
  const marks = id ? document.querySelectorAll(`mark[data-notes~="${CSS.escape(id)}"]`) : [];
  for (const mark of marks) mark.classList.add("held");
  if (marks[0] && id !== shown) marks[0].scrollIntoView({ block: "center" });
  if (document.activeElement === document.body || !document.activeElement?.isConnected) find("card").focus({ preventScroll: true });
  shown = id;
};
const open = (id) => id && ask("GET", "/note", { id });
const step = (by) => {
  const all = lines(), now = all.findIndex((line) => line.dataset.note === held());
  const next = all[now < 0 ? 0 : Math.min(Math.max(now + by, 0), all.length - 1)];
  return next && open(next.dataset.note);
};

// The recording.
let until = null;
const playFrom = (seconds, end = null) => {
  if (!player || Number.isNaN(seconds)) return say("There is no recording to play: the page works on its words alone.");
  until = end;
  player.currentTime = Math.max(0, seconds);
  player.play();
};
const hear = () => {
  const note = find("card").firstElementChild;
  if (note?.dataset.start) playFrom(Number(note.dataset.start) - 1, Number(note.dataset.end) + 0.5);
};
const openAndHear = async (id) => {
  await open(id);
  if (player) hear();
};
const cues = [...document.querySelectorAll(".cue[data-start]")];
const starts = cues.map((cue) => Number(cue.dataset.start));
let playing = null;
player?.addEventListener("timeupdate", () => {
  if (until !== null && player.currentTime >= until) { player.pause(); until = null; }
  let low = 0, high = starts.length;
  while (low < high) { const mid = (low + high) >> 1; if (starts[mid] <= player.currentTime) low = mid + 1; else high = mid; }
  const now = find(cues[low - 1]?.id);
  if (now === playing) return;
  playing?.classList.remove("now");
  now?.classList.add("now");
  if (!player.paused) now?.scrollIntoView({ block: "nearest" });
  playing = now;
});

// Chosen words, as characters of the talk: Python counts characters, a browser counts UTF-16 units.
const offset = (node, inside) => {
  const said = (node.nodeType === 1 ? node : node.parentElement).closest(".said");
  if (!said) return null;
  const before = document.createRange();
  before.selectNodeContents(said);
  before.setEnd(node, inside);
  return Number(said.dataset.from) + [...before.toString()].length;
};
const chosen = () => {
  const selection = getSelection();
  if (!selection.rangeCount || selection.isCollapsed) return null;
  const range = selection.getRangeAt(0);
  const from = offset(range.startContainer, range.startOffset), to = offset(range.endContainer, range.endOffset);
  return from !== null && to !== null && from < to ? { from, to } : null;
};
const takeWords = () => {
  const words = chosen();
  return words && ask("GET", "/words", { ...words, id: held() });
};
let pressed = null;
find("talk").addEventListener("pointerdown", (event) => { pressed = [event.clientX, event.clientY]; });
find("talk").addEventListener("pointerup", (event) => {
  const time = event.target.closest("[data-play]");
  if (time) return playFrom(Number(time.dataset.play));
  if (chosen()) return then(takeWords);
  const mark = event.target.closest("mark");
  if (mark) return then(() => openAndHear(nextOf(mark.dataset.notes.split(" "))));
  if (!event.target.closest(".said")) return;
  const selection = getSelection();
  selection.modify("move", "backward", "word");
  selection.modify("extend", "forward", "word");
  then(takeWords);
});
// Where several notes share their words, each click goes on to the next of them.
const nextOf = (ids) => ids[(ids.indexOf(held()) + 1) % ids.length];

// Words by keyboard: a run of words, counted over the cue at hand and on into the next.
const beside = (cue, by) => find(`c-${Number(cue.id.slice(2)) + by}`);
const words = () => {
  const here = document.querySelector("mark.held")?.closest(".cue") ?? playing ?? document.querySelector(".cue");
  const found = [];
  for (let cue = find(run?.cue ?? here.id), left = 3; cue && left; cue = beside(cue, 1), left -= 1) {
    const walk = document.createTreeWalker(cue.querySelector(".said"), NodeFilter.SHOW_TEXT);
    for (let open = false; walk.nextNode(); open = !/\s$/.test(walk.currentNode.data)) {
      const node = walk.currentNode;
      for (const word of node.data.matchAll(/\S+/g)) {
        const end = { node, at: word.index + word[0].length };
        if (open && word.index === 0) found.at(-1).end = end;  // a mark ends within a word
        else found.push({ node, start: word.index, end, cue: cue.id });
      }
    }
  }
  return found;
};
let run = null;
const moveWords = (by, extend) => {
  if (!run) {
    const here = document.querySelector("mark.held")?.closest(".cue") ?? playing ?? document.querySelector(".cue");
    const inside = words(), mark = document.querySelector("mark.held");
    run = { cue: here.id, first: Math.max(0, inside.findIndex((word) => mark?.contains(word.node))), length: 1 };
  } else if (extend) run.length = Math.max(1, run.length + by);
  else if (run.first + by < 0) {
    const before = beside(find(run.cue), -1);
    if (!before) return;
    run = { cue: before.id, first: 0, length: 1 };
    run.first = words().filter((word) => word.cue === run.cue).length - 1;
  } else run = { ...run, first: run.first + by, length: 1 };
  let all = words();
  if (!extend && all[run.first] && all[run.first].cue !== run.cue) {
    const cue = all[run.first].cue;
    run.first -= all.findIndex((word) => word.cue === cue);
    run.cue = cue;
    all = words();
  }
  const one = all[run.first], end = all[Math.min(run.first + run.length, all.length) - 1];
  if (!one || !end) return;
  getSelection().setBaseAndExtent(one.node, one.start, end.end.node, end.end.at);
  find(one.cue).scrollIntoView({ block: "nearest" });
  say(`Chosen: ${getSelection().toString()}`);
};

// Rows of the card: a letter chooses the row, a digit what it says.
const rows = () => [...document.querySelectorAll("#card .row[data-key]")];
const askRow = (row) => {
  for (const other of rows()) other.classList.toggle("asked", other === row);
  const input = row.querySelector("input:not([type=hidden]), select");
  if (input) { input.focus(); input.select?.(); }
  else say(`${row.dataset.name}: press a digit.`);
};
const choose = (digit) => {
  const button = document.querySelector(`#card .row.asked [data-digit="${digit}"]`);
  return button && edit(JSON.parse(button.dataset.values));
};

const deeds = {
  hear, "edit-next": () => edit({ do: "confirm", next: 1 }), drop: () => edit({ do: "delete", next: 1 }),
  undo: () => ask("POST", "/undo", { id: held() }), redo: () => ask("POST", "/redo", { id: held() }),
  next: () => ask("GET", "/next", { id: held() }), before: () => ask("GET", "/next", { id: held(), back: 1 }),
  down: () => step(1), up: () => step(-1), words: () => takeWords() ?? say("First choose words of the talk: with the mouse, or with , and ."),
  play: () => player && (player.paused ? (until = null, player.play()) : player.pause()),
  here: () => {
    const mark = [...(playing ?? document).querySelectorAll("mark")].at(playing ? -1 : 0);
    return mark ? open(mark.dataset.notes.split(" ")[0]) : say("Nothing is noted of these words: choose them with , and .");
  },
  everywhere: () => edit({ do: "mend" }), sheet: () => ask("GET", "/sheet"), keys: () => find("keys").showModal(),
  "word-on": () => moveWords(1), "word-back": () => moveWords(-1), "word-more": () => moveWords(1, true), "word-less": () => moveWords(-1, true),
};
const keys = {
  a: "edit-next", x: "drop", u: "undo", U: "redo", n: "next", N: "before", j: "down", k: "up", ArrowDown: "down", ArrowUp: "up",
  h: "hear", g: "here", o: "words", " ": "play", r: "everywhere", "?": "keys", "!": "sheet",
  ".": "word-on", ",": "word-back", ">": "word-more", "<": "word-less",
};
const ROWS = "spfitbvcelqydmrow";
const plain = (event) => !event.ctrlKey && !event.metaKey && !event.altKey;
document.addEventListener("keydown", (event) => {
  const typing = event.target.closest("input, select, textarea, dialog, audio, video");
  if ((event.ctrlKey || event.metaKey) && !typing && "zy".includes(event.key.toLowerCase()) && event.key) {
    event.preventDefault();
    return then(deeds[event.key.toLowerCase() === "y" || event.shiftKey ? "redo" : "undo"]);
  }
  if (event.key === "Escape" && typing && typing.localName !== "dialog") return find("card").focus();
  if (typing || !plain(event) || find("single").getAttribute("aria-pressed") !== "true") return;
  if ([" ", "Enter"].includes(event.key) && event.target.closest("button, a, summary")) return;
  if (!/^[0-9]$/.test(event.key) && !ROWS.includes(event.key) && !keys[event.key]) return;
  event.preventDefault();
  then(() => heed(event.key));
});
const heed = (key) => {
  if (/^[0-9]$/.test(key)) return choose(key);
  const row = rows().find((one) => one.dataset.key === key);
  return row ? askRow(row) : deeds[keys[key]]?.();
};

document.addEventListener("click", (event) => {
  const button = event.target.closest("button");
  if (!button) return;
  const { note, deed, tab, values } = button.dataset;
  if (deed) then(deeds[deed]);
  else if (values) then(() => edit(JSON.parse(values)));
  else if (tab) showTab(tab);
  else if (note) then(() => openAndHear(note));
});
const showTab = (name) => {
  document.body.dataset.tab = name;
  for (const tab of document.querySelectorAll("[data-tab]:not(body)")) tab.setAttribute("aria-pressed", tab.dataset.tab === name);
};
find("single").addEventListener("click", (event) => {
  const on = event.target.getAttribute("aria-pressed") !== "true";
  event.target.setAttribute("aria-pressed", on);
});
document.addEventListener("submit", (event) => {
  if (event.target.method === "dialog") return;
  event.preventDefault();
  const form = event.target, values = Object.fromEntries(new FormData(form));
  find("card").focus({ preventScroll: true });
  then(() => ask(form.dataset.verb ?? "POST", form.dataset.path ?? "/edit", { id: held(), ...values }));
});
addEventListener("htmx:response:error", (event) => say(event.detail.ctx.text.replace(/^notesmith: /, "Not done: ")));
addEventListener("htmx:error", () => say("The server does not answer. Nothing was changed: start notesmith review again."));
document.addEventListener("selectionchange", () => { if (getSelection().isCollapsed) run = null; });
settle();
