// Has the pages kept on the device by the service worker (worker.js), and says how far that is.

let registration;
let say;
let reloading = false;
let failed = false;
// Where the page came from the laptop itself, the first worker is no change of build.
const wasKept = !!navigator.serviceWorker?.controller;

export async function watch(listener) {
  say = (state, kept, of) => listener.invokeMethodAsync("Say", state, kept, of, !!registration?.waiting && wasKept);
  // Browsers keep pages only from an address that nobody on the way can change.
  if (!isSecureContext || !navigator.serviceWorker) return say("unable", 0, 0);
  navigator.serviceWorker.addEventListener("message", ({ data }) => data.of && report(data));
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (!wasKept || reloading) return;
    reloading = true;
    // Another build has taken over: this page must not ask it for parts. What was typed is on the device at each key.
    location.reload();
  });
  try {
    registration = await navigator.serviceWorker.register("worker.js", { updateViaCache: "none" });
  } catch {
    // Refused, or no laptop at the very first opening.
  }
  if (!registration) return say("failed", 0, 0);
  registration.addEventListener("updatefound", () => {
    failed = false;
    follow(registration.installing);
  });
  follow(registration.installing ?? registration.waiting ?? registration.active);
  addEventListener("online", look);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && look());
}

function follow(worker) {
  if (!worker) return;
  worker.addEventListener("statechange", () => {
    // A build that could not be kept whole is thrown away by the browser and tried again at the next opening.
    failed = worker.state === "redundant" && !registration.active;
    ask();
  });
  ask();
}

// An open page hears of a new build when it is looked at again; a laptop that does not answer changes nothing.
function look() {
  registration.update().catch(() => {});
  ask();
}

// Asks the worker that would open the pages now how much of them it has; the first one says itself how it gets on.
function ask() {
  if (!registration.active) return say(failed ? "failed" : "keeping", 0, 0);
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data }) => {
    report(data);
    if (data.kept < data.of) registration.active.postMessage("keep");
  };
  registration.active.postMessage("state", [port2]);
}

// News of a build that is still being fetched beside a whole one does not matter to whoever is on that one.
function report({ build, kept, of }) {
  if (!registration.active && failed) return; // What was on its way when it failed.
  if (build || !registration.active) say(kept === of && registration.active ? "kept" : "keeping", kept, of);
  else if (kept === of) ask();
}

export async function persisted() {
  return (await navigator.storage?.persisted?.()) ?? false;
}

// Opens the newer build.
export function takeOver() {
  registration?.waiting?.postMessage("take over");
}
