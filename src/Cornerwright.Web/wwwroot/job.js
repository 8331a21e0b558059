// Ticks of a job. Each tick is kept in this browser under a key of its own before anything is sent, and taken out only when the
// server has said that it is safe. Sending the same tick twice does no harm: the server knows it by its id.
(() => {
  "use strict";
  const self = document.currentScript.dataset;
  const prefix = `cornerwright-tick:${self.car}:${self.job}:`;
  const said = `cornerwright-said:${self.car}:${self.job}`;
  const steps = [...document.querySelectorAll("[data-step]")];
  const memory = new Map(); // where this browser keeps nothing: for as long as the page is open
  let keeps = true, server = new Set(steps.filter((s) => s.dataset.done === "true").map((s) => s.dataset.step));
  let now = 0, sending = false, again = 0, wait = 1000, refusal = "";

  // A page opened again without a connection may be older than the server's last word: the one that knows of more ticks counts.
  try {
    const last = JSON.parse(localStorage.getItem(said) ?? "null");
    if (last && last.count > Number(self.count)) server = new Set(last.done);
  } catch { /* nothing was kept */ }

  const $ = (id) => document.getElementById(id);
  const hex = () => [...crypto.getRandomValues(new Uint8Array(8))].map((b) => b.toString(16).padStart(2, "0")).join("");

  const keep = (tick) => {
    try { localStorage.setItem(prefix + tick.id, JSON.stringify(tick)); }
    catch { keeps = false; memory.set(tick.id, tick); }
  };
  const forget = (id) => {
    memory.delete(id);
    try { localStorage.removeItem(prefix + id); } catch { /* nothing was kept */ }
  };
  const waiting = () => {
    const ticks = [...memory.values()];
    try {
      for (let i = 0; i < localStorage.length; i++) {
        const key = localStorage.key(i);
        if (!key.startsWith(prefix)) continue;
        try { ticks.push(JSON.parse(localStorage.getItem(key))); } catch { /* not ours */ }
      }
    } catch { keeps = false; }
    return ticks.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  };
  const done = () => {
    const all = new Set(server);
    for (const tick of waiting()) tick.takenBack ? all.delete(tick.step) : all.add(tick.step);
    return all;
  };

  function draw() {
    const all = done(), left = waiting().length;
    steps.forEach((step, i) => {
      const is = all.has(step.dataset.step);
      step.dataset.done = String(is);
      step.classList.toggle("now", i === now);
      const row = step.querySelector(".row");
      row.setAttribute("aria-expanded", String(i === now));
      row.querySelector(".said").textContent = is ? "done: " : "";
    });
    $("done-count").textContent = steps.filter((s) => all.has(s.dataset.step)).length;
    const isDone = steps.length > 0 && all.has(steps[now].dataset.step);
    $("tick").textContent = isDone ? "Take back" : "Done";
    $("tick").classList.toggle("undo", isDone);
    $("back").disabled = now === 0;
    $("next").disabled = now >= steps.length - 1;
    const state = refusal ? "refused" : left === 0 ? "sent" : navigator.onLine ? "sending" : "waiting";
    const many = left === 1 ? "1 tick waits" : `${left} ticks wait`;
    $("sending").dataset.state = state;
    $("sending").dataset.left = String(left);
    $("sending").textContent = refusal ? refusal
      : left === 0 ? "All ticks are sent"
      : `${many} for the connection${keeps ? ": kept on this phone" : "; keep this page open, this browser keeps nothing"}`;
  }

  function go(to, scroll = true) {
    now = Math.max(0, Math.min(steps.length - 1, to));
    draw();
    if (scroll && steps[now]) steps[now].scrollIntoView({ block: "start", behavior: matchMedia("(prefers-reduced-motion: reduce)").matches ? "auto" : "smooth" });
  }

  function tick() {
    const step = steps[now].dataset.step, takenBack = done().has(step);
    const name = step.length <= 80 ? `${step} ${hex()}` : hex() + hex();
    keep({ id: name, step, at: new Date().toISOString(), takenBack });
    draw();
    if (!takenBack) {
      const all = done();
      let next = steps.findIndex((s, i) => i > now && !all.has(s.dataset.step));
      if (next < 0) next = steps.findIndex((s) => !all.has(s.dataset.step));
      go(next < 0 ? now : next);
    }
    send();
  }

  async function send() {
    clearTimeout(again);
    if (sending) return;
    const ticks = waiting();
    if (ticks.length === 0) { refusal = ""; draw(); return; }
    sending = true;
    try {
      const answer = await fetch(self.send, {
        method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(ticks), cache: "no-store",
        signal: AbortSignal.timeout ? AbortSignal.timeout(15000) : undefined,
      });
      if (answer.ok) {
        const word = await answer.json();
        server = new Set(word.done);
        try { localStorage.setItem(said, JSON.stringify({ count: word.count, done: word.done })); } catch { /* then the page knows it */ }
        word.kept.forEach(forget);
        refusal = "";
        wait = 1000;
      } else if (answer.status >= 400 && answer.status < 500) {
        const problems = await answer.json().catch(() => []);
        refusal = `The ticks stay on this phone: ${problems[0]?.cure ?? "the workshop's computer does not take them."}`;
        wait = 30000;
      } else {
        throw new Error(String(answer.status));
      }
    } catch {
      wait = Math.min(wait * 2, 30000); // no connection, or the computer sleeps: later
    }
    sending = false;
    draw();
    if (waiting().length > 0) again = setTimeout(send, wait);
  }

  steps.forEach((step, i) => step.querySelector(".row").addEventListener("click", () => go(i, false)));
  $("tick").addEventListener("click", tick);
  $("back").addEventListener("click", () => go(now - 1));
  $("next").addEventListener("click", () => go(now + 1));
  $("light").addEventListener("click", () => window.cornerwright.toggleTheme());
  addEventListener("online", () => { wait = 1000; send(); });
  addEventListener("offline", draw);
  addEventListener("storage", draw);
  document.addEventListener("visibilitychange", () => { if (!document.hidden) send(); });
  document.body.classList.add("live");
  const open = done();
  const first = steps.findIndex((s) => !open.has(s.dataset.step));
  go(first < 0 ? 0 : first, first > 0);
  send();
  // Where the browser allows it, the list can be opened again without a connection.
  if ("serviceWorker" in navigator) {
    navigator.serviceWorker.register("/job-worker.js", { scope: "/car/" })
      .then(() => navigator.serviceWorker.ready)
      .then((worker) => worker.active.postMessage({ keep: [location.href.split("#")[0], ...performance.getEntriesByType("resource").map((r) => r.name)
        .filter((name) => name.startsWith(location.origin) && /\.(css|js|svg|woff2)(\?|$)/.test(name))] }))
      .catch(() => { /* then not: a reload needs the connection, the ticks do not */ });
  }
})();
