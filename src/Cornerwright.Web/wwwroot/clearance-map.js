// The map of gaps under a pointer and under arrow keys. Sends the newest place once a drawn frame, and never before the
// last one is answered; what the pointer only passes over is read here, from the numbers the map was drawn from.
export function hold(field, page) {
  if (!field) return { stop() {} };   // the page was left meanwhile
  const svg = field.querySelector('svg'), words = field.parentElement.querySelector('.read');
  let latest = null, letGo = false, busy = false, frame = 0, held = false;
  const schedule = () => { if (!frame) frame = requestAnimationFrame(flush); };

  async function flush() {
    frame = 0;
    if (busy) return;
    busy = true;
    try {
      if (latest) { const [name, ...what] = latest; latest = null; await page.invokeMethodAsync(name, ...what); }
      else if (letGo) { letGo = false; await page.invokeMethodAsync('Release'); }
    } catch {
      latest = null; letGo = false;   // The circuit is gone; the page shows that by itself.
    } finally {
      busy = false;
      if (latest || letGo) schedule();
    }
  }

  const place = event => new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
  const put = (...what) => { latest = what; schedule(); };

  function read(at) {
    const d = field.dataset, [left, top, right, bottom] = d.frame.split(' ').map(Number);
    if (at.x < left || at.x > right || at.y < top || at.y > bottom) { words.textContent = '\u00a0'; return; }
    const many = Number(d.steers), high = Number(d.travels);
    const j = many === 1 ? 0 : Math.round((right - at.x) / (right - left) * (many - 1)), i = Math.round((bottom - at.y) / (bottom - top) * (high - 1));
    const travel = Number(d.travelLow) + (d.travelHigh - d.travelLow) * i / (high - 1);
    const steer = many === 1 ? Number(d.steerLow) : Number(d.steerLow) + (d.steerHigh - d.steerLow) * j / (many - 1);
    if (d.readings !== field.known) { field.known = d.readings; field.gaps = d.readings.split(','); }
    const gap = field.gaps[j * high + i];
    const angle = Math.abs(steer) < 0.05 ? 'straight ahead' : `${Math.abs(steer).toFixed(0)}° to the ${steer > 0 ? 'left' : 'right'}`;
    const where = `Travel ${travel < 0 ? '−' : '+'}${Math.abs(travel).toFixed(0)} mm, ${angle}: `;
    words.textContent = where + (gap === '' ? 'not met' : Number(gap) < 0 ? `overlaps by ${(-gap / 10).toFixed(1)} mm` : `gap ${(gap / 10).toFixed(1)} mm`);
  }

  const on = {
    pointerdown(event) {
      if (event.button !== 0) return;
      held = true;
      svg.setPointerCapture(event.pointerId);
      field.focus({ preventScroll: true });
      const at = place(event);
      put('Point', at.x, at.y);
      event.preventDefault();
    },
    pointermove(event) {
      const at = place(event);
      read(at);
      if (held) put('Point', at.x, at.y);
    },
    pointerup() { if (held) { letGo = true; schedule(); } held = false; },
    pointercancel() { held = false; },
    pointerleave() { words.textContent = '\u00a0'; },
    keydown(event) {
      if (event.ctrlKey || event.altKey || event.metaKey) return;
      const step = event.shiftKey ? 5 : 1;
      const way = { ArrowLeft: [1, 0], ArrowRight: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
      if (!way) return;
      event.preventDefault();
      if (!latest) put('Step', way[0] * step, way[1] * step);
    },
  };
  for (const name in on) field.addEventListener(name, on[name]);
  field.dataset.held = 'ready';
  return { stop() { for (const name in on) field.removeEventListener(name, on[name]); cancelAnimationFrame(frame); } };
}
