// Scans in a view3d view, and files on their way in. Points are picked with a click or a tap that does not turn the view;
// picked places go to the server in the scan's own frame.
import * as THREE from 'three';
import { open } from './view3d.js';

const CLICK_PX = 6;

/** @returns {object|null} null where the browser cannot draw in three dimensions. */
export function stage(host, owner) {
  const view = open(host, { side: 1 });
  return view && new Stage(view, owner);
}

class Stage {
  constructor(view, owner) {
    Object.assign(this, { view, owner, marks: [], picking: false });
    this.ray = new THREE.Raycaster();
    this.ray.params.Points.threshold = 0.004;
    const canvas = view.renderer.domElement;
    this.down = event => { this.at = [event.clientX, event.clientY]; };
    this.up = event => {
      const [x, y] = this.at ?? [0, 0];
      if (this.picking && Math.hypot(event.clientX - x, event.clientY - y) < CLICK_PX) this.pick(event.clientX, event.clientY);
    };
    canvas.addEventListener('pointerdown', this.down);
    canvas.addEventListener('pointerup', this.up);
    view.host.dataset.view = 'open';
  }

  /** Shows drawings (name, address, token, opacity); turn is the quaternion (x, y, z, w) of the whole view, side 1 or -1; behind: from the far side. */
  async show(drawings, turn, side, behind, picking, looking) {
    Object.assign(this, { picking, behind });
    this.view.host.classList.toggle('picking', picking);
    for (const name of [...this.view.parts.keys()]) if (!drawings.some(d => d.name === name) && !name.startsWith('pick')) this.view.remove(name);
    this.view.body.quaternion.set(...turn);
    this.view.side = side;
    for (const d of drawings) {
      if (this.known?.[d.name] === d.address) continue;
      await this.view.fetch(d.name, d.address, { token: d.token, opacity: d.opacity, size: 0.003 });
    }
    this.known = Object.fromEntries(drawings.map(d => [d.name, d.address]));
    this.view.scene.updateMatrixWorld(true);   // the turn counts before the view is fitted to it
    if (looking) this.look(looking);
    this.view.redraw();
    this.view.host.dataset.shown = drawings.map(d => d.name).join(' ');
  }

  /** Balls at picked points: x, y, z after one another, in the frame of what is shown. */
  setMarks(points) {
    for (const name of this.marks) this.view.remove(name);
    this.marks = [];
    for (let i = 0; i + 2 < points.length; i += 3) {
      const name = 'pick' + i / 3;
      this.view.mark(name, [points[i], points[i + 1], points[i + 2]], { token: 'focus', radius: 0.014 });
      this.marks.push(name);
    }
  }

  pick(x, y) {
    const box = this.view.renderer.domElement.getBoundingClientRect();
    this.ray.setFromCamera(new THREE.Vector2(2 * (x - box.left) / box.width - 1, 1 - 2 * (y - box.top) / box.height), this.view.camera);
    this.view.scene.updateMatrixWorld();
    const scan = this.view.parts.get('scan');
    const hit = scan && this.ray.intersectObject(scan, false)[0];
    if (!hit) return;
    const p = scan.worldToLocal(hit.point.clone());
    this.owner.invokeMethodAsync('PickedAt', p.x, p.y, p.z);
  }

  look(side) {
    this.view.look(side);
    if (this.behind) this.view.turn(Math.PI, 0);
  }

  zoom(factor) { this.view.zoom(factor); }

  dispose() {
    const canvas = this.view.renderer.domElement;
    canvas.removeEventListener('pointerdown', this.down);
    canvas.removeEventListener('pointerup', this.up);
    this.view.dispose();
  }
}

/**
 * Sends the chosen file past the circuit, tells the owner how far it is, and how it ended.
 * @returns {object|null} with cancel(); null when no file is chosen.
 */
export function send(input, owner, header) {
  const file = input.files?.[0];
  if (!file) return null;
  const request = new XMLHttpRequest();
  let read = 0, over = false, told = 0;
  const say = (name, ...what) => owner.invokeMethodAsync(name, ...what).catch(() => {});
  const end = (name, ...what) => { if (!over) { over = true; input.value = ''; say(name, ...what); } };
  const lines = () => {
    const text = request.responseText;
    for (let at = text.indexOf('\n', read); at >= 0; at = text.indexOf('\n', read)) {
      const line = JSON.parse(text.slice(read, at));
      read = at + 1;
      if (line.problem) end('Refused', line.problem.field, line.problem.given, line.problem.allowed, line.problem.cure);
      else if (line.hash) end('CameIn', line.hash, line.name);
      else if (!over) say('Reading', line.read);
    }
  };
  request.upload.onprogress = event => {
    const now = performance.now();
    if (!over && event.lengthComputable && (now - told > 120 || event.loaded === event.total)) { told = now; say('Sent', event.loaded / event.total); }
  };
  request.onprogress = lines;
  request.onload = () => { if (request.status === 200) lines(); end('Broken', `The server answered ${request.status}.`); };
  request.onerror = () => end('Broken', 'The connection broke off.');
  request.onabort = () => end('Cancelled');
  request.open('POST', '/scans/import?name=' + encodeURIComponent(file.name));
  request.setRequestHeader('Content-Type', 'application/octet-stream');
  request.setRequestHeader(header, '1');
  request.send(file);
  return { cancel: () => request.abort() };
}
