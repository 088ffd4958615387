/*
 * Keeps the floor's page and what it was told on the device, so that it opens and works without the network. The build
 * puts the list of files before this script; it imports nothing, so that every browser takes it as it is.
 */

/** Files of this version of the floor's page, with a name for the version. */
declare const FLOOR_FILES: { readonly version: string; readonly paths: readonly string[] };
/** What a script of this kind has about it, as far as it is used here. */
interface ServiceScope {
  readonly location: Location;
  readonly skipWaiting: () => Promise<void>;
  readonly clients: { readonly claim: () => Promise<void> };
  addEventListener(type: "install" | "activate", heard: (event: LastingEvent) => void): void;
  addEventListener(type: "fetch", heard: (event: FetchEvent) => void): void;
  addEventListener(type: "message", heard: (event: MessageEvent) => void): void;
}
interface LastingEvent {
  readonly waitUntil: (work: Promise<unknown>) => void;
}
interface FetchEvent extends LastingEvent {
  readonly request: Request;
  readonly respondWith: (answer: Promise<Response>) => void;
}
declare const self: ServiceScope;

const PAGE = "/floor.html";
const FILES = `floor-files-${FLOOR_FILES.version}`;
/** Answers of the server, the newest of each; they outlive a new version of the page. */
const ANSWERS = "floor-answers";
/** Files that are fetched only when they are needed, such as the Chinese letters. */
const LATE_FILES = "floor-late-files";
const OURS = /^floor-/;
/** So long the server is waited for before what it said last time stands in. */
const PATIENCE_MS = 1_500;
/** Requests whose last answer stands in when nobody answers. */
const KEPT_ANSWERS = [
  /^\/api\/status$/,
  /^\/api\/books$/,
  /^\/api\/units(\/[^/]+)?$/,
  /^\/api\/unit-summaries$/,
  /^\/api\/books\/[^/]+\/rows$/,
  // What is released never changes.
  /^\/api\/books\/[^/]+\/releases\/[^/]+\/(line|sheets|sheets\/[^/]+)$/,
];

self.addEventListener("install", (event) => event.waitUntil(keepFiles()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));
self.addEventListener("message", ({ data }) => {
  if (data === "take-over") void self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  const { pathname } = url;
  if (request.mode === "navigate") {
    if (/^\/floor(\/|$)/.test(pathname)) event.respondWith(fileOf(PAGE, request));
  } else if (FLOOR_FILES.paths.includes(pathname)) event.respondWith(fileOf(pathname, request));
  else if (pathname.startsWith("/assets/")) event.respondWith(lateFile(request));
  else if (KEPT_ANSWERS.some((path) => path.test(pathname))) event.respondWith(answerOf(event));
});

async function keepFiles(): Promise<void> {
  const files = await caches.open(FILES);
  await files.addAll(FLOOR_FILES.paths.map((path) => new Request(path, { cache: "reload" })));
}

/** The first version answers at once; a later one only when the page lets it, so that no page is of two versions. */
async function takeOver(): Promise<void> {
  for (const name of await caches.keys())
    if (OURS.test(name) && ![FILES, ANSWERS, LATE_FILES].includes(name)) await caches.delete(name);
  await self.clients.claim();
}

async function fileOf(path: string, request: Request): Promise<Response> {
  const kept = await (await caches.open(FILES)).match(path);
  return kept ?? fetch(request);
}

async function lateFile(request: Request): Promise<Response> {
  const files = await caches.open(LATE_FILES);
  const kept = await files.match(request);
  if (kept !== undefined) return kept;
  const fresh = await fetch(request);
  if (fresh.ok && fresh.type === "basic") await files.put(request, fresh.clone());
  return fresh;
}

/** What the server says now; what it said last time when it does not answer. A refusal is an answer. */
async function answerOf(event: FetchEvent): Promise<Response> {
  const { request } = event;
  const answers = await caches.open(ANSWERS);
  const fresh = fetch(request).then(async (response) => {
    if (response.ok) await answers.put(request, response.clone());
    else if (response.status < 500) await answers.delete(request);
    return response;
  });
  event.waitUntil(fresh.catch(() => undefined));
  const kept = await answers.match(request);
  if (kept === undefined) return fresh;
  const late = new Promise<Response>((done) => setTimeout(() => done(kept), PATIENCE_MS));
  return Promise.race([fresh.then((response) => (response.status >= 502 ? kept : response)), late]).catch(
    () => kept,
  );
}

// Marks this as a module for the compiler; the build takes the line away, since not every browser takes modules here.
export {};
