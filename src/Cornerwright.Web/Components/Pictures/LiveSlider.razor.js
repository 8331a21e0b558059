// Sends the newest value once a drawn frame, and never before the last one is answered: a slow circuit gets fewer
// steps, never a queue of old ones, and the last value always arrives.
function pump(send) {
  let latest, waiting = false, busy = false, frame = 0;
  const schedule = () => { if (!frame) frame = requestAnimationFrame(flush); };
  async function flush() {
    frame = 0;
    if (busy || !waiting) return;
    busy = true; waiting = false;
    try { await send(latest); } catch { waiting = false; } finally { busy = false; if (waiting) schedule(); }
  }
  return value => { latest = value; waiting = true; schedule(); };
}

// A native range input. `show` moves the thumb from outside, but never under the user's finger.
export function slide(input, page) {
  let held = false;
  const put = pump(value => page.invokeMethodAsync('Slide', value));
  const moved = () => put(input.valueAsNumber);
  const down = () => { held = true; };
  const up = () => { held = false; };
  input.addEventListener('input', moved);
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
      input.removeEventListener('pointerdown', down);
      input.removeEventListener('pointerup', up);
      input.removeEventListener('pointercancel', up);
    },
  };
}

// A handle in a drawing that is dragged up and down; the page hears the pointer's height in the drawing's own units.
export function drag(svg, selector, page) {
  let grabbed = false, offset = 0;
  const put = pump(y => page.invokeMethodAsync('Drag', y));
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
  const move = event => { if (grabbed) put(heightOf(event) - offset); };
  const up = () => { grabbed = false; };
  const key = event => {
    if (/^(Arrow(Up|Down|Left|Right)|Page(Up|Down))$/.test(event.key) && event.target.closest(selector)) event.preventDefault();
  };
  const on = { pointerdown: down, pointermove: move, pointerup: up, pointercancel: up, keydown: key };
  for (const name in on) svg.addEventListener(name, on[name]);
  return { stop() { for (const name in on) svg.removeEventListener(name, on[name]); } };
}
