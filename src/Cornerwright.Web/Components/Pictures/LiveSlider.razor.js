// Sends the newest value once a drawn frame, and never before the last one is answered: a slow circuit gets fewer
// steps, never a queue of old ones, and the last value always arrives.
function pump(send, done) {
  let latest, waiting = false, busy = false, letGo = false, frame = 0;
  const schedule = () => { if (!frame) frame = requestAnimationFrame(flush); };
  async function flush() {
    frame = 0;
    if (busy) return;
    busy = true;
    try {
      if (waiting) { waiting = false; await send(latest); }
      else if (letGo) { letGo = false; await done(); }
    } catch {
      waiting = letGo = false;   // The circuit is gone; the page shows that by itself.
    } finally {
      busy = false;
      if (waiting || letGo) schedule();
    }
  }
  return {
    put(value) { latest = value; waiting = true; schedule(); },
    release() { letGo = true; schedule(); },
  };
}

// A native range input. `show` moves the thumb from outside, but never under the user's finger.
export function slide(input, page) {
  if (!input) return { show() {}, stop() {} };   // the page was left meanwhile
  let held = false;
  const line = pump(value => page.invokeMethodAsync('Slide', value), () => page.invokeMethodAsync('Release'));
  const moved = () => line.put(input.valueAsNumber);
  const changed = () => line.release();
  const down = () => { held = true; };
  const up = () => { held = false; };
  input.addEventListener('input', moved);
  input.addEventListener('change', changed);
  input.addEventListener('pointerdown', down);
  input.addEventListener('pointerup', up);
  input.addEventListener('pointercancel', up);
  return {
    show(value, max) {
      if (held) return;
      input.max = max;
      input.value = value;
    },
    stop() {
      input.removeEventListener('input', moved);
      input.removeEventListener('change', changed);
      input.removeEventListener('pointerdown', down);
      input.removeEventListener('pointerup', up);
      input.removeEventListener('pointercancel', up);
    },
  };
}

// A handle in a drawing that is dragged up and down; the page hears the pointer's height in the drawing's own units.
export function drag(svg, selector, page) {
  let grabbed = false, offset = 0;
  const line = pump(y => page.invokeMethodAsync('Drag', y), () => page.invokeMethodAsync('Release'));
  const heightOf = event => new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse()).y;
  const down = event => {
    const handle = event.target.closest(selector);
    if (!handle || event.button !== 0) return;
    const box = handle.querySelector('.grip').getBBox();
    offset = heightOf(event) - (box.y + box.height / 2);
    grabbed = true;
    svg.setPointerCapture(event.pointerId);
    handle.focus({ preventScroll: true });
    event.preventDefault();
  };
  const move = event => { if (grabbed) line.put(heightOf(event) - offset); };
  const up = () => { if (grabbed) line.release(); grabbed = false; };
  const key = event => {
    if (/^(Arrow(Up|Down|Left|Right)|Page(Up|Down))$/.test(event.key) && event.target.closest(selector)) event.preventDefault();
  };
  const on = { pointerdown: down, pointermove: move, pointerup: up, pointercancel: up, keydown: key };
  for (const name in on) svg.addEventListener(name, on[name]);
  return { stop() { for (const name in on) svg.removeEventListener(name, on[name]); } };
}
