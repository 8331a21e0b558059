// One cursor through all charts of a sweep: by the slider's keys, by the pointer over any chart. Also saves a text as a file.
const COUNT = 81;

export function attach(root) {
  if (!root) return { refresh() {}, stop() {} };   // the page was left meanwhile
  const slider = root.querySelector('input[type=range]'), output = root.querySelector('output');
  let charts = [], least = 0, most = 1;

  function read() {
    least = Number(root.dataset.least);
    most = Number(root.dataset.most);
    charts = [...root.querySelectorAll('[data-chart]')].map(figure => ({
      figure, lines: JSON.parse(figure.dataset.lines), names: JSON.parse(figure.dataset.names), unit: figure.dataset.unit,
      decimals: Number(figure.dataset.decimals), from: Number(figure.dataset.from), to: Number(figure.dataset.to),
      cursor: figure.querySelector('.cursor'), words: figure.querySelector('.read'),
    }));
  }

  const number = (value, decimals) => (value === null ? 'none' : value.toFixed(decimals).replace(/^-(0(\.0*)?)$/, '$1').replace('-', '−'));

  function show() {
    const i = slider.valueAsNumber, place = least + (most - least) * i / (COUNT - 1);
    const words = `${root.dataset.word} ${place > 0 ? '+' : ''}${number(place, 0)} mm`;
    output.textContent = words;
    slider.setAttribute('aria-valuetext', words);
    for (const c of charts) {
      const x = c.from + (c.to - c.from) * i / (COUNT - 1), unit = c.unit === '°' ? '°' : c.unit ? ' ' + c.unit : '';
      c.cursor.setAttribute('x1', x);
      c.cursor.setAttribute('x2', x);
      c.cursor.setAttribute('visibility', 'visible');
      c.words.textContent = c.lines.length === 1 ? number(c.lines[0][i], c.decimals) + unit
        : c.lines.map((line, k) => `${c.names[k]} ${number(line[i], c.decimals)}${line[i] === null ? '' : unit}`).join(', ');
    }
  }

  function point(event) {
    const svg = event.target.closest?.('[data-chart] svg');
    if (!svg) return;
    const chart = charts.find(c => c.figure.contains(svg)), box = svg.getBoundingClientRect();
    const x = (event.clientX - box.left) / box.width * svg.viewBox.baseVal.width;
    const i = Math.round((x - chart.from) / (chart.to - chart.from) * (COUNT - 1));
    if (i < 0 || i >= COUNT || i === slider.valueAsNumber) return;
    slider.valueAsNumber = i;
    show();
  }

  function refresh() { read(); show(); }

  slider.addEventListener('input', show);
  root.addEventListener('pointermove', point);
  root.addEventListener('pointerdown', point);
  read();
  // To begin with the cursor stands where the car was measured.
  slider.valueAsNumber = Math.max(0, Math.min(COUNT - 1, Math.round(-least / (most - least) * (COUNT - 1))));
  show();
  return {
    refresh,
    stop() {
      slider.removeEventListener('input', show);
      root.removeEventListener('pointermove', point);
      root.removeEventListener('pointerdown', point);
    },
  };
}

export function save(name, text) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/csv;charset=utf-8' }));
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
