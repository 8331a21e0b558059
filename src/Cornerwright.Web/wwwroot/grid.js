// Keys and paste of a sheet of cells: inputs that carry data-r and data-c.
export function attach(root, page) {
  if (!root) return { stop() {} };   // the page was left meanwhile
  const at = (r, c) => root.querySelector(`input[data-r="${r}"][data-c="${c}"]`);

  function go(r, c) {
    const cell = at(r, c);
    if (!cell) return false;
    cell.focus();
    cell.select();
    return true;
  }

  const key = event => {
    const cell = event.target;
    if (!cell.matches?.('input[data-r]') || event.ctrlKey || event.altKey || event.metaKey) return;
    const r = Number(cell.dataset.r), c = Number(cell.dataset.c);
    const whole = cell.selectionStart === 0 && cell.selectionEnd === cell.value.length;
    const atStart = whole || cell.selectionEnd === 0, atEnd = whole || cell.selectionStart === cell.value.length;
    const went = event.key === 'ArrowDown' || (event.key === 'Enter' && !event.shiftKey) ? go(r + 1, c)
      : event.key === 'ArrowUp' || event.key === 'Enter' ? go(r - 1, c)
      : event.key === 'ArrowRight' && atEnd ? go(r, c + 1)
      : event.key === 'ArrowLeft' && atStart ? go(r, c - 1)
      : false;
    if (went) event.preventDefault();
    else if (event.key === 'Escape') { cell.value = cell.defaultValue; cell.select(); }
  };

  // One cell is pasted by the browser itself; more than one is for the page.
  const paste = event => {
    const cell = event.target, text = event.clipboardData?.getData('text/plain') ?? '';
    if (!cell.matches?.('input[data-r]') || !/[\t\n;]/.test(text.replace(/[\r\n]+$/, ''))) return;
    event.preventDefault();
    page.invokeMethodAsync('Paste', Number(cell.dataset.r), Number(cell.dataset.c), text);
  };

  root.addEventListener('keydown', key);
  root.addEventListener('paste', paste);
  return {
    stop() {
      root.removeEventListener('keydown', key);
      root.removeEventListener('paste', paste);
    },
  };
}
