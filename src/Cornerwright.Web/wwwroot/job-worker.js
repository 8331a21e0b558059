// Keeps the list of a job and what it needs, so that a phone can open it again without a connection. Touches no other page: the
// network is asked first, and the kept copy is shown only when it does not answer.
const room = "cornerwright-job-1";
const isJob = (url) => /^\/car\/[^/]+\/job\/[^/]+$/.test(url.pathname);
const isFile = (url) => /\.(css|js|svg|woff2)$/.test(url.pathname);

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

async function keep(request) {
  const answer = await fetch(request);
  if (answer.ok) (await caches.open(room)).put(request, answer.clone());
  return answer;
}

self.addEventListener("message", (event) => {
  if (Array.isArray(event.data?.keep)) event.waitUntil(Promise.all(event.data.keep.map((url) => keep(new Request(url)).catch(() => {}))));
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== location.origin) return;
  const fromJob = event.request.referrer && isJob(new URL(event.request.referrer));
  if (!(isJob(url) || (isFile(url) && (fromJob || url.pathname.endsWith(".woff2"))))) return;
  event.respondWith(keep(event.request).catch(async () => (await caches.match(event.request, { ignoreSearch: true })) ?? Response.error()));
});
