// A press counts where the finger went down. Leaving a box sends its text to be read, and the answer may move the page
// before the finger is up again: the browser then finds nothing, or something else, that was pressed.
(() => {
  const pressable = "button, a[href], summary, label, input[type=checkbox], input[type=radio]";
  const still = 10;       // px; a finger that moved further has dragged, not pressed
  const comesWithin = 400; // ms; the browser's own click for the same press follows its pointerup at once
  let down = null, made = null;

  document.addEventListener("pointerdown", (e) => {
    const target = e.isPrimary && e.button === 0 && e.target instanceof Element ? e.target.closest(pressable) : null;
    down = target ? { target, id: e.pointerId, x: e.clientX, y: e.clientY } : null;
  }, true);

  document.addEventListener("pointercancel", () => { down = null; }, true);

  document.addEventListener("pointerup", (e) => {
    const press = down;
    down = null;
    if (!press || press.id !== e.pointerId || Math.hypot(e.clientX - press.x, e.clientY - press.y) > still) return;
    const under = document.elementFromPoint(e.clientX, e.clientY);
    if (press.target.contains(under) || !press.target.isConnected || press.target.disabled) return;
    press.target.click();
    made = e.timeStamp;
  }, true);

  // The click that the browser makes of it is not a second press, nor one on whatever lies there now. Keys click with detail 0.
  document.addEventListener("click", (e) => {
    if (!e.isTrusted || e.detail === 0 || made === null) return;
    if (e.timeStamp - made < comesWithin) {
      e.preventDefault();
      e.stopImmediatePropagation();
    }
    made = null;
  }, true);
})();
