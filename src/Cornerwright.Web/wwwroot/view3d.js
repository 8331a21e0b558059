// A view into three dimensions: body frame of docs/frames.md (X forward, Y left, Z up), metres. It draws only when
// something changed, takes its colours from the style sheet's tokens, answers to keys, and gives everything back at the end.
import * as THREE from 'three';
import { OrbitControls } from 'three/orbit';

// Milliseconds: a drawing slower than SLOW_MS is felt as a stutter; after RESTING_MS without a change the view rests.
const SLOW_MS = 45, SLOW_FRAMES = 5, RESTING_MS = 400;

const SIDES = {
  corner: [1, 0.9, 0.5], front: [1, 0, 0], rear: [-1, 0, 0], street: [0, 1, 0], above: [0.001, 0, 1],
};

/**
 * Opens a view in an element; null where the browser cannot.
 * @param {HTMLElement} host Empty, with a height of its own, focusable; keys are heard there.
 * @param {{side?: 1 | -1}} options side: 1 looks from the left of the car, -1 from the right.
 */
export function open(host, options = {}) {
  const drawnBy = graphics();
  if (!drawnBy) return null;
  try {
    // Where no graphics card draws, smooth edges would cost more than they show.
    const renderer = new THREE.WebGLRenderer({ antialias: drawnBy === 'card', alpha: true, powerPreference: 'low-power' });
    return new View(host, renderer, options.side ?? 1);
  } catch { return null; }
}

/** 'card', 'software', or null where this browser cannot draw in three dimensions. */
function graphics() {
  const context = document.createElement('canvas').getContext('webgl2');
  if (!context) return null;
  const names = context.getExtension('WEBGL_debug_renderer_info');
  const card = names ? context.getParameter(names.UNMASKED_RENDERER_WEBGL) : '';
  context.getExtension('WEBGL_lose_context')?.loseContext();
  return /swiftshader|llvmpipe|software|basic render/i.test(card) ? 'software' : 'card';
}

/** Colour of a token, for instance "ink" for --cw-ink. */
export function tokenColour(token) {
  return new THREE.Color(getComputedStyle(document.documentElement).getPropertyValue('--cw-' + token).trim() || '#888');
}

class View {
  constructor(host, renderer, side) {
    Object.assign(this, { host, renderer, side, parts: new Map(), painted: new Map(), frame: 0, drawn: 0, closed: false });
    this.resolution();
    host.append(renderer.domElement);
    renderer.domElement.setAttribute('aria-hidden', 'true');
    this.scene = new THREE.Scene();
    this.body = new THREE.Group();
    this.wheel = new THREE.Group();      // what turns and travels with the wheel: see setPose
    this.scene.add(this.body, this.wheel);
    this.camera = new THREE.PerspectiveCamera(32, 1, 0.02, 60);
    this.camera.up.set(0, 0, 1);
    this.lamp = new THREE.DirectionalLight(0xffffff, 1.7);
    this.scene.add(new THREE.HemisphereLight(0xffffff, 0x777777, 1.6), this.lamp);
    this.controls = new OrbitControls(this.camera, renderer.domElement);
    this.controls.enableDamping = false;  // nothing moves by itself
    this.controls.enableZoom = false;     // a page that scrolls stays a page; see onWheel
    renderer.domElement.style.touchAction = 'pan-y';
    this.controls.addEventListener('change', () => this.redraw());
    this.listen();
    this.paint();
    this.resize();
  }

  listen() {
    const { host } = this;
    this.resizing = new ResizeObserver(() => this.resize());
    this.resizing.observe(host);
    this.repaint = () => { this.paint(); this.redraw(); };
    this.theme = new MutationObserver(this.repaint);
    this.theme.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
    this.night = matchMedia('(prefers-color-scheme: dark)');
    this.night.addEventListener('change', this.repaint);
    this.onKey = event => this.key(event);
    this.onWheel = event => {
      // Zooming needs the view in hand: clicked before, or the control key held.
      const inHand = host.contains(document.activeElement) || event.ctrlKey;
      if (!inHand) return;
      event.preventDefault();
      this.zoom(Math.exp(Math.sign(event.deltaY) * 0.12));
    };
    host.addEventListener('keydown', this.onKey);
    host.addEventListener('wheel', this.onWheel, { passive: false });
  }

  /** Colours anew from the tokens: by day, by night, on paper. */
  paint() {
    for (const [material, token] of this.painted) material.color.copy(tokenColour(token));
  }

  /** A material whose colour is a token's. */
  material(token, { opacity = 1, lines = false, flat = false, size = 0, both = false } = {}) {
    const see = opacity < 1;
    const common = { transparent: see, opacity, depthWrite: !see };
    const made = size > 0 ? new THREE.PointsMaterial({ ...common, size, sizeAttenuation: true })
      : lines ? new THREE.LineBasicMaterial(common)
      : flat ? new THREE.MeshBasicMaterial({ ...common, side: THREE.DoubleSide })
      : new THREE.MeshLambertMaterial({ ...common, side: both ? THREE.DoubleSide : THREE.FrontSide });
    made.forceSinglePass = true;
    made.color.copy(tokenColour(token));
    this.painted.set(made, token);
    return made;
  }

  /** Puts an object into the view under a name; what bore the name before is taken out. on: 'body' or 'wheel'. */
  add(name, object, on = 'body') {
    this.remove(name);
    (on === 'wheel' ? this.wheel : this.body).add(object);
    this.parts.set(name, object);
    this.redraw();
    return object;
  }

  /**
   * Triangles: positions as x, y, z in metres, indices three a triangle (or none: every three points are one).
   * look: token, opacity, on ('body' or 'wheel').
   */
  addMesh(name, positions, indices, { token = 'now', opacity = 1, on = 'body' } = {}) {
    const shape = new THREE.BufferGeometry();
    shape.setAttribute('position', new THREE.BufferAttribute(floats(positions), 3));
    if (indices?.length) shape.setIndex(new THREE.BufferAttribute(indices instanceof Uint32Array ? indices : new Uint32Array(indices), 1));
    shape.computeVertexNormals();
    return this.add(name, new THREE.Mesh(shape, this.material(token, { opacity, both: true })), on);
  }

  /** A cloud of points: x, y, z in metres; size of a point in metres. */
  addPoints(name, positions, { token = 'now', size = 0.002, opacity = 1, on = 'body' } = {}) {
    const shape = new THREE.BufferGeometry();
    shape.setAttribute('position', new THREE.BufferAttribute(floats(positions), 3));
    return this.add(name, new THREE.Points(shape, this.material(token, { size, opacity })), on);
  }

  /**
   * Fetches a mesh or a cloud: little-endian, two 32-bit counts (points, indices), then the points as 32-bit floats, then
   * the indices as 32-bit whole numbers. Without indices it is a cloud.
   */
  async fetch(name, url, look = {}) {
    const answer = await fetch(url);
    if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
    const data = await answer.arrayBuffer();
    if (this.closed) return null;
    const [points, indices] = new Uint32Array(data, 0, 2);
    const positions = new Float32Array(data, 8, points * 3);
    return indices > 0 ? this.addMesh(name, positions, new Uint32Array(data, 8 + points * 12, indices), look) : this.addPoints(name, positions, look);
  }

  /** Marks a place with a ball, and a line to a second place if there is one: a gap, a worst place. */
  mark(name, at, { to = null, token = 'fails', radius = 0.008, on = 'body' } = {}) {
    const group = new THREE.Group(), material = this.material(token);
    for (const p of to ? [at, to] : [at]) {
      const ball = new THREE.Mesh(new THREE.SphereGeometry(radius, 16, 12), material);
      ball.position.set(...p);
      group.add(ball);
    }
    if (to) {
      const line = new THREE.BufferGeometry().setFromPoints([new THREE.Vector3(...at), new THREE.Vector3(...to)]);
      group.add(new THREE.Line(line, this.material(token, { lines: true })));
    }
    return this.add(name, group, on);
  }

  /** Where the wheel's group stands: centre of the hub face and a unit quaternion (x, y, z, w) from the wheel's axes at the reference state. */
  setPose(origin, turn) {
    this.wheel.position.set(...origin);
    this.wheel.quaternion.set(...turn);
    this.redraw();
  }

  show(name, visible) {
    const part = this.parts.get(name);
    if (part && part.visible !== visible) { part.visible = visible; this.redraw(); }
  }

  remove(name) {
    const part = this.parts.get(name);
    if (!part) return;
    part.removeFromParent();
    this.discard(part);
    this.parts.delete(name);
    this.redraw();
  }

  /** Gives back what an object holds of the graphics card. */
  discard(object) {
    object.traverse(o => {
      o.geometry?.dispose();
      for (const m of [o.material].flat()) if (m) { m.dispose(); this.painted.delete(m); }
    });
  }

  /** Looks from a side: corner, front, rear, street, above. */
  look(side) {
    const [x, y, z] = SIDES[side] ?? SIDES.corner;
    this.from = new THREE.Vector3(x, y * this.side, z).normalize();
    this.fit();
  }

  /** Brings everything visible into the view, from where it is looked at. */
  fit() {
    const box = new THREE.Box3();
    for (const part of this.parts.values()) if (part.visible && !part.userData.unbounded) box.expandByObject(part);
    if (box.isEmpty()) return;
    const ball = box.getBoundingSphere(new THREE.Sphere());
    const from = this.from ?? new THREE.Vector3(...SIDES.corner).normalize();
    const angle = Math.min(this.camera.fov, 2 * Math.atan(Math.tan(this.camera.fov * Math.PI / 360) * this.camera.aspect) * 180 / Math.PI);
    const distance = 0.9 * ball.radius / Math.sin(angle * Math.PI / 360);   // corners of the ball's box are empty
    this.controls.target.copy(ball.center);
    this.camera.position.copy(ball.center).addScaledVector(from, distance);
    this.controls.update();
    this.redraw();
  }

  zoom(factor) {
    const arm = this.camera.position.clone().sub(this.controls.target);
    arm.setLength(Math.min(20, Math.max(0.1, arm.length() * factor)));
    this.camera.position.copy(this.controls.target).add(arm);
    this.controls.update();
    this.redraw();
  }

  turn(across, up) {
    const arm = new THREE.Spherical().setFromVector3(new THREE.Vector3().copy(this.camera.position).sub(this.controls.target).applyAxisAngle(new THREE.Vector3(1, 0, 0), -Math.PI / 2));
    arm.theta += across;
    arm.phi = Math.min(Math.PI - 0.02, Math.max(0.02, arm.phi - up));
    const to = new THREE.Vector3().setFromSpherical(arm).applyAxisAngle(new THREE.Vector3(1, 0, 0), Math.PI / 2);
    this.camera.position.copy(this.controls.target).add(to);
    this.controls.update();
    this.redraw();
  }

  key(event) {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const step = Math.PI / 36;
    const does = {
      ArrowLeft: () => this.turn(-step, 0), ArrowRight: () => this.turn(step, 0), ArrowUp: () => this.turn(0, step), ArrowDown: () => this.turn(0, -step),
      '+': () => this.zoom(0.9), '=': () => this.zoom(0.9), '-': () => this.zoom(1.1), 0: () => this.look('corner'),
      1: () => this.look('front'), 2: () => this.look('street'), 3: () => this.look('above'),
    }[event.key];
    if (does) { event.preventDefault(); does(); }
  }

  resize() {
    const { clientWidth: width, clientHeight: height } = this.host;
    if (!width || !height) return;
    this.renderer.setSize(width, height, false);
    this.camera.aspect = width / height;
    this.camera.updateProjectionMatrix();
    this.redraw();
  }

  /** Asks for one drawing at the next frame of the screen, however often it is asked. */
  redraw() {
    if (this.frame || this.closed) return;
    this.frame = requestAnimationFrame(now => {
      this.frame = 0;
      this.pace(now);
      this.lamp.position.copy(this.camera.position);
      this.renderer.render(this.scene, this.camera);
      this.drawn++;
      this.host.dataset.drawn = this.drawn;
    });
  }

  /** On a slow machine what moves is drawn coarser, and sharp again once it rests. */
  pace(now) {
    const since = now - (this.last ?? 0), moving = since < RESTING_MS;
    this.last = now;
    if (moving) this.frameMs = 0.7 * (this.frameMs ?? since) + 0.3 * since;
    this.slow = moving && this.frameMs > SLOW_MS ? (this.slow ?? 0) + 1 : 0;
    if (!this.coarse && this.slow >= SLOW_FRAMES) { this.coarse = true; this.resolution(); }
    clearTimeout(this.rest);
    if (this.coarse) this.rest = setTimeout(() => { this.coarse = false; this.last = 0; this.resolution(); this.redraw(); }, RESTING_MS);
  }

  resolution() { this.renderer.setPixelRatio(this.coarse ? 0.5 : Math.min(devicePixelRatio || 1, 2)); }

  dispose() {
    if (this.closed) return;
    this.closed = true;
    cancelAnimationFrame(this.frame);
    clearTimeout(this.rest);
    this.resizing.disconnect();
    this.theme.disconnect();
    this.night.removeEventListener('change', this.repaint);
    this.host.removeEventListener('keydown', this.onKey);
    this.host.removeEventListener('wheel', this.onWheel);
    this.controls.dispose();
    for (const name of [...this.parts.keys()]) this.remove(name);
    this.discard(this.scene);
    this.renderer.dispose();
    this.renderer.forceContextLoss();
    this.renderer.domElement.remove();
  }
}

function floats(values) { return values instanceof Float32Array ? values : new Float32Array(values); }
