// What a bench needs of a browser: a beat to redraw clocks by, a sound and a shake when one is due, and photos kept until the
// laptop has them. Nothing here knows what a clock is for, or what is on a photo.

// Clocks. What they show is worked out from the wall clock at each beat; the beat itself counts nothing, and may stop and go on.
let listener;
let beating = false;
let last = null;
let away = false;

export function clocks(dotnet) {
  listener = dotnet;
  setInterval(() => beating && beat(), 500);
  const left = () => (away = true);
  const back = () => beating && beat();
  document.addEventListener("visibilitychange", () => (document.visibilityState === "visible" ? back() : left()));
  for (const name of ["pagehide", "freeze"]) addEventListener(name, left);
  document.addEventListener("freeze", left);
  for (const name of ["pageshow", "focus"]) addEventListener(name, back);
  document.addEventListener("resume", back);
  addEventListener("pointerdown", touched, true);
  addEventListener("keydown", touched, true);
}

export function beats(on) {
  beating = on;
  if (on) last = null;
  if (!on) quiet();
}

// The wall clock against one that nobody can set. They part when the wall clock was set, and when the device slept: the other one
// stands still meanwhile. Asleep a page is out of sight, mostly; so what happens in sight is said, and back is always said.
function beat() {
  const wall = Date.now();
  const steady = performance.now();
  const jump = last ? wall - last.wall - (steady - last.steady) : 0;
  const told = jump < -2000 || (jump > 60000 && !away) ? jump : 0;
  last = { wall, steady };
  away = document.visibilityState !== "visible";
  listener.invokeMethodAsync("Beat", told);
}

// Sound needs a touch first; browsers ask for that. A ring goes on until somebody touches the screen.
let audio;
let ringing;
const heard = new Set(JSON.parse(sessionStorage.getItem("heard") ?? "[]"));
const due = new Set();

export function sounds() {
  return audio?.state === "running";
}

function touched() {
  if (!beating) return;
  try {
    audio ??= new AudioContext();
    if (audio.state !== "running") audio.resume().then(() => listener.invokeMethodAsync("Beat", 0));
  } catch {
    audio = undefined; // no sound on this device; it shakes and shows
  }
  if (due.size === 0) return;
  for (const key of due) heard.add(key);
  sessionStorage.setItem("heard", JSON.stringify([...heard].slice(-50)));
  quiet();
}

export function ring(key) {
  if (heard.has(key) || due.has(key)) return;
  due.add(key);
  ringing ??= setInterval(once, 20000);
  once();
}

function quiet() {
  due.clear();
  clearInterval(ringing);
  ringing = undefined;
}

function once() {
  navigator.vibrate?.([500, 200, 500, 200, 500]);
  if (audio?.state !== "running") return;
  for (let i = 0; i < 3; i++) {
    const at = audio.currentTime + i * 0.5;
    const tone = audio.createOscillator();
    const loud = audio.createGain();
    tone.frequency.value = 880;
    loud.gain.setValueAtTime(0.8, at);
    loud.gain.setValueAtTime(0, at + 0.3);
    tone.connect(loud).connect(audio.destination);
    tone.start(at);
    tone.stop(at + 0.3);
  }
}

// Photos. One store a job book, each photo under the hash of its bytes.
let photos;
const SIDE = 1600;

function done(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function completed(transaction) {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error("not kept"));
    transaction.onerror = () => reject(transaction.error);
  });
}

export async function openPhotos(book) {
  const request = indexedDB.open(`photos ${book}`, 1);
  request.onupgradeneeded = () => request.result.createObjectStore("photos", { keyPath: "name" });
  photos = await done(request);
  photos.onversionchange = () => photos.close();
}

function write() {
  return photos.transaction(["photos"], "readwrite", { durability: "strict" });
}

function row(name) {
  return done(photos.transaction("photos").objectStore("photos").get(name));
}

// A photo as it comes from the camera, made small. What is drawn anew carries no notes of the camera: no place, no owner.
export async function shrink(input) {
  const file = input.files[0];
  input.value = "";
  if (!file) return null;
  let picture;
  try {
    picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    return null;
  }
  const by = Math.min(1, SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * by));
  canvas.height = Math.max(1, Math.round(picture.height * by));
  const to = canvas.getContext("2d");
  to.imageSmoothingQuality = "high";
  to.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", 0.85));
  return new Uint8Array(await blob.arrayBuffer());
}

// Resolves only after the disk has it.
export async function keepPhoto(name, bytes, state) {
  const t = write();
  const finished = completed(t);
  const store = t.objectStore("photos");
  store.get(name).onsuccess = (e) => {
    // One that the laptop has already need not be sent again.
    if (!e.target.result) store.put({ name, jpeg: bytes, state, reason: null });
  };
  await finished;
}

export async function statePhoto(name, state, reason) {
  const t = write();
  const finished = completed(t);
  const store = t.objectStore("photos");
  store.get(name).onsuccess = (e) => e.target.result && store.put({ ...e.target.result, state, reason });
  await finished;
}

export async function photoRows() {
  const all = await done(photos.transaction("photos").objectStore("photos").getAll());
  return JSON.stringify(all.map(({ name, state, reason }) => ({ name, state, reason })));
}

export async function photoBytes(name) {
  return (await row(name))?.jpeg ?? null;
}

export async function photoUrl(name) {
  const found = await row(name);
  return found ? URL.createObjectURL(new Blob([found.jpeg], { type: "image/jpeg" })) : null;
}

export function letUrl(url) {
  URL.revokeObjectURL(url);
}

async function picture(name) {
  const found = await row(name);
  return found ? createImageBitmap(new Blob([found.jpeg], { type: "image/jpeg" })) : null;
}

export async function photoSize(name) {
  const p = await picture(name);
  return p ? [p.width, p.height] : null;
}

// A piece of a photo as red, green, blue, opacity, row by row.
export async function pixels(name, x, y, width, height) {
  const p = await picture(name);
  if (!p) return null;
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const to = canvas.getContext("2d", { willReadFrequently: true });
  to.drawImage(p, x, y, width, height, 0, 0, width, height);
  return new Uint8Array(to.getImageData(0, 0, width, height).data.buffer);
}

// Where a finger is on a picture, in parts of its width and height.
export function within(element, clientX, clientY) {
  const box = element.getBoundingClientRect();
  return [(clientX - box.left) / box.width, (clientY - box.top) / box.height];
}
