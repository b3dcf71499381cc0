// The device's own memory (IndexedDB), and the few things of a browser that Blazor does not reach.
// Nothing here decides anything: the C# side says what to keep, this says when it is kept.

const NAME = "shaftwright";
const VERSION = 1;
// What belongs to this device, and what belongs to one job book: another may be served at the same address tomorrow.
let device;
let database;

function done(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

// "strict": the promise of the transaction is kept only after the data are flushed to the disk.
function write(stores) {
  return database.transaction(stores, "readwrite", { durability: "strict" });
}

function completed(transaction) {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error("not kept"));
    transaction.onerror = () => reject(transaction.error);
  });
}

async function opened(name, stores) {
  const request = indexedDB.open(name, VERSION);
  request.onupgradeneeded = () => {
    for (const [store, options] of Object.entries(stores)) request.result.createObjectStore(store, options);
  };
  const db = await done(request);
  db.onversionchange = () => db.close();
  return db;
}

export async function open() {
  device = await opened(NAME, { settings: { keyPath: "key" } });
  // Ask that the browser does not clear this when it is short of room. It may say no; nothing depends on it.
  navigator.storage?.persist?.();
}

export async function openBook(id) {
  database = await opened(`${NAME} ${id}`, {
    documents: { keyPath: "id" },
    outbox: { keyPath: "seq", autoIncrement: true },
    drafts: { keyPath: "key" },
  });
}

export async function settings() {
  const rows = await done(device.transaction("settings").objectStore("settings").getAll());
  return JSON.stringify(rows);
}

export async function setting(key, value) {
  const t = device.transaction(["settings"], "readwrite", { durability: "strict" });
  t.objectStore("settings").put({ key, value });
  await completed(t);
}

export async function draft(key) {
  const row = await done(database.transaction("drafts").objectStore("drafts").get(key));
  return row?.text ?? null;
}

export async function drafts() {
  return JSON.stringify(await done(database.transaction("drafts").objectStore("drafts").getAll()));
}

export async function keepDraft(key, text) {
  const t = write(["drafts"]);
  putDraft(t, key, text);
  await completed(t);
}

function putDraft(t, key, text) {
  if (text === null) t.objectStore("drafts").delete(key);
  else t.objectStore("drafts").put({ key, text });
}

export async function documents() {
  return JSON.stringify(await done(database.transaction("documents").objectStore("documents").getAll()));
}

export async function outbox() {
  return JSON.stringify(await done(database.transaction("outbox").objectStore("outbox").getAll()));
}

// One transaction: the edits, the document they make and what is left of the drafts, or nothing of it. Returns false when another tab kept a newer
// document meanwhile; then nothing is written and the caller applies its edits to that one.
export async function keep(id, text, expected, edits, drafts) {
  const t = write(["documents", "outbox", "drafts"]);
  const finished = completed(t);
  let moved = false;
  const documents = t.objectStore("documents");
  documents.get(id).onsuccess = (e) => {
    if ((e.target.result?.version ?? 0) !== expected) {
      moved = true;
      return;
    }
    documents.put({ id, text, version: expected + 1 });
    for (const edit of JSON.parse(edits))
      t.objectStore("outbox").add({ ...edit, state: "waiting", reason: null });
    for (const draft of JSON.parse(drafts)) putDraft(t, draft.key, draft.text);
  };
  await finished;
  return !moved;
}

// The laptop's answers: taken edits leave, refused ones stay with its reason.
export async function answered(json) {
  const answers = new Map(JSON.parse(json).map((a) => [a.id, a]));
  const t = write(["outbox"]);
  const finished = completed(t);
  t.objectStore("outbox").openCursor().onsuccess = (e) => {
    const cursor = e.target.result;
    if (!cursor) return;
    const answer = answers.get(cursor.value.id);
    if (answer?.taken) cursor.delete();
    else if (answer) cursor.update({ ...cursor.value, state: "refused", reason: answer.reason });
    cursor.continue();
  };
  await finished;
}

// A refused entry is let go only when a person says so.
export async function letGo(id) {
  const t = write(["outbox"]);
  const finished = completed(t);
  t.objectStore("outbox").openCursor().onsuccess = (e) => {
    const cursor = e.target.result;
    if (!cursor) return;
    if (cursor.value.id === id) cursor.delete();
    cursor.continue();
  };
  await finished;
}

// A document from the laptop. Entries still waiting here would be lost under it, so it is taken only when there are none.
export async function receive(id, text) {
  const t = write(["documents", "outbox"]);
  const finished = completed(t);
  let outcome = "held";
  t.objectStore("outbox").getAll().onsuccess = (e) => {
    if (e.target.result.some((row) => row.jobId === id)) return;
    const documents = t.objectStore("documents");
    documents.get(id).onsuccess = (g) => {
      const old = g.target.result;
      outcome = old?.text === text ? "same" : "taken";
      if (outcome === "taken") documents.put({ id, text, version: (old?.version ?? 0) + 1 });
    };
  };
  await finished;
  return outcome;
}

export function touch() {
  return matchMedia("(pointer: coarse)").matches;
}

// Tells the C# side whenever it is worth trying to send again.
export function watch(listener) {
  const call = () => listener.invokeMethodAsync("Nudge");
  addEventListener("online", call);
  addEventListener("focus", call);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") call();
  });
  setInterval(call, 15000);
}

// The boxes a hand can see, in their order: one folded away cannot take the cursor.
function boxesOf(part) {
  return [...part.querySelectorAll("input[data-lead]")].filter((b) => b.checkVisibility());
}

// Puts the cursor where the hand goes next: the first refused box, else the first empty one, else the first, else the heading.
export function lead() {
  const main = document.querySelector("main");
  // An answer is read from its top; a question begins in its first empty box.
  const boxes = main.querySelector(".answer.big") ? [] : boxesOf(main);
  const refused = boxes.find((b) => b.getAttribute("aria-invalid") === "true");
  const target = refused ?? boxes.find((b) => b.value === "") ?? boxes[0] ?? main.querySelector("h1");
  if (!target) return;
  target.focus({ preventScroll: boxes.length === 0 });
  if (boxes.length === 0) scrollTo(0, 0);
}

export function focusOn(id) {
  document.getElementById(id)?.focus();
}

export function print() {
  window.print();
}

// Enter goes to the next box of the same form; from the last one it sends the form, which goes to the next question.
document.addEventListener("keydown", (e) => {
  if (e.key !== "Enter" || !(e.target instanceof HTMLInputElement) || !e.target.form) return;
  const boxes = boxesOf(e.target.form);
  const next = boxes[boxes.indexOf(e.target) + 1];
  if (boxes.includes(e.target) && next) {
    e.preventDefault();
    next.focus();
    next.select();
  }
});

// A screen that sleeps between two readings costs the place. Browsers that cannot keep it awake are left alone.
let awake;
async function stayAwake() {
  if (document.visibilityState !== "visible") return;
  try {
    awake = await navigator.wakeLock?.request("screen");
  } catch {
    awake = undefined; // a low battery may refuse
  }
}
document.addEventListener("visibilitychange", stayAwake);
document.addEventListener("pointerdown", () => (!awake || awake.released) && stayAwake());

// A box that is left says what is wrong with it, and makes room for that. Between press and release this would push away what
// is under the finger, and the tap would go nowhere: so that a box was left, or entered, is told when the press is over.
let pressed = false;
const held = [];

function hold(e) {
  if (!pressed || !e.isTrusted || !(e.target instanceof HTMLElement)) return;
  e.stopImmediatePropagation();
  held.push([e.target, e.type]);
}

function release() {
  pressed = false;
  for (const [box, type] of held.splice(0)) if (box.isConnected) box.dispatchEvent(new FocusEvent(type));
}

for (const type of ["blur", "focus"]) addEventListener(type, hold, true);
addEventListener("mousedown", () => (pressed = true), true);
// After the page's own handlers of the click.
addEventListener("click", release);
// A press that ends elsewhere than it began makes no click of its own.
addEventListener("mouseup", () => setTimeout(release), true);
for (const type of ["dragend", "contextmenu", "pointercancel"]) addEventListener(type, release, true);
document.addEventListener("visibilitychange", release);
