// One wheel among everything near it, in a view3d view: tyre and rim, strut, lines of measured gaps, scans, the nearest place with its
// gap, and on request the room that the tyre sweeps. What stands where comes once; the pose comes as 32-bit floats.
import * as THREE from 'three';
import { open } from './view3d.js';

const UP = new THREE.Vector3(0, 1, 0);
const LINE = 0.0035;   // m: a measured line is drawn as a bar, so that it is seen
const FIXED = 3 + 9 + 1 + 6 + 1;

/**
 * @param {HTMLElement} host
 * @param {object} scene side, tyre and rim (outlines a, r), body and knuckle (lines: arrays of x, y, z), scans {name, address, knuckle}.
 * @returns {Promise<object|null>} null where the browser cannot draw in three dimensions.
 */
export async function show(host, scene) {
  if (!host) return null;   // the page was left meanwhile
  const view = open(host, { side: scene.side });
  if (!view) return null;
  const made = new Surroundings(view);
  await made.build(scene);
  return made;
}

class Surroundings {
  constructor(view) {
    Object.assign(this, { view, strut: [], shown: {} });
    view.host.dataset.view = 'open';
  }

  /** Another scene: other parts, other scans. Scans that are here already stay. */
  async build(scene) {
    const { view } = this;
    this.turn = (this.turn ?? 0) + 1;
    const turn = this.turn;
    view.side = scene.side;
    const keep = new Set(scene.scans.map(s => 'scan:' + s.address));
    for (const name of [...view.parts.keys()]) if (!keep.has(name)) view.remove(name);
    this.strut = [];
    const wheel = new THREE.Group();
    wheel.add(turned(scene.tyre, view.material('new', { opacity: 0.5, both: true })));
    wheel.add(turned(scene.rim, view.material('ink-2', { opacity: 0.6, both: true })));
    view.add('wheel', wheel, 'wheel');
    view.add('lines', this.bars(scene.body), 'body');
    view.add('knuckle', this.bars(scene.knuckle, p => [p[1], p[0], p[2]]), 'wheel');
    for (const s of scene.scans) {
      const name = 'scan:' + s.address;
      if (view.parts.has(name)) continue;
      try {
        const part = await view.fetch(name, s.address, { token: 'now', size: 0.003, on: s.knuckle ? 'wheel' : 'body' });
        if (turn !== this.turn) return;
        // Of the knuckle a scan comes as a, 12, 3; the wheel's group has 12 along its first axis and the spindle along its second.
        part?.applyMatrix4(s.knuckle ? SWAP : new THREE.Matrix4());
      } catch { view.host.dataset.lacking = 'scan'; }
    }
    view.host.dataset.scans = scene.scans.length;
  }

  bars(lines, place = p => p) {
    const group = new THREE.Group(), material = this.view.material('ink');
    for (const line of lines) {
      const points = line.map(p => new THREE.Vector3(...place(p)));
      for (const p of points) {
        const ball = new THREE.Mesh(new THREE.SphereGeometry(LINE * 1.9, 12, 8), material);
        ball.position.copy(p);
        group.add(ball);
      }
      for (let i = 0; i + 1 < points.length; i++) group.add(bar(points[i], points[i + 1], LINE, material));
    }
    return group;
  }

  /**
   * Hub face; 12 o'clock, spindle, 3 o'clock; whether there is a nearest place, its ends on thing and wheel; how many pieces the strut has, each:
   * foot, direction (in a, 12, 3), length, radius. Bytes of 32-bit floats, little-endian.
   */
  pose(bytes) {
    const f = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
    if (f.length < FIXED || f.length !== FIXED + 8 * f[FIXED - 1]) return;
    const v = i => new THREE.Vector3(f[i], f[i + 1], f[i + 2]);
    const { view } = this;
    const turn = new THREE.Quaternion().setFromRotationMatrix(new THREE.Matrix4().makeBasis(v(3), v(6), v(9)));
    view.setPose([f[0], f[1], f[2]], turn.toArray());
    if (f[12] > 0) this.nearest(v(13), v(16));
    view.show('nearest', f[12] > 0);
    this.pieces(f);
    view.host.dataset.hub = [f[0], f[1], f[2]].map(x => x.toFixed(4)).join(' ');
    view.redraw();
    if (!this.looked) { this.looked = true; view.look('corner'); }
  }

  /** The dimension: a bar between two balls, seen through everything, since the place is most often inside the arch. Made once, then moved. */
  nearest(at, to) {
    if (!this.view.parts.has('nearest')) {
      const group = new THREE.Group(), material = this.view.material('fails', { flat: true });
      material.depthTest = false;
      material.transparent = true;
      this.ends = [at, to].map(() => new THREE.Mesh(new THREE.SphereGeometry(0.007, 16, 12), material));
      this.gap = bar(at, to, 0.0028, material);
      group.add(...this.ends, this.gap);
      group.traverse(o => { o.renderOrder = 9; });
      this.view.add('nearest', group, 'body');
    }
    this.ends[0].position.copy(at);
    this.ends[1].position.copy(to);
    lay(this.gap, at, to);
  }

  pieces(f) {
    const count = f[FIXED - 1], { view } = this;
    if (this.strut.length !== count) {
      const group = new THREE.Group(), material = view.material('ink-2');
      this.strut = Array.from({ length: count }, () => {
        const piece = new THREE.Mesh(new THREE.CylinderGeometry(1, 1, 1, 28, 1), material);
        group.add(piece);
        return piece;
      });
      view.add('strut', group, 'wheel');
      view.show('strut', this.shown.strut ?? true);
    }
    this.strut.forEach((piece, i) => {
      const k = FIXED + 8 * i;
      const foot = new THREE.Vector3(f[k + 1], f[k], f[k + 2]), along = new THREE.Vector3(f[k + 4], f[k + 3], f[k + 5]), length = Math.max(1e-6, f[k + 6]);
      piece.position.copy(foot).addScaledVector(along, length / 2);
      piece.scale.set(f[k + 7], length, f[k + 7]);
      piece.quaternion.setFromUnitVectors(UP, along);
    });
  }

  /** The swept room, fetched; an empty address takes it away. */
  async swept(address) {
    this.wanted = address;
    if (!address) { this.view.remove('swept'); this.view.host.dataset.swept = ''; return; }
    try {
      await this.view.fetch('swept', address, { token: 'accent', opacity: 0.22 });
      if (this.wanted !== address) this.view.remove('swept');
      this.view.host.dataset.swept = this.wanted ? 'yes' : '';
    } catch { this.view.host.dataset.swept = ''; }
  }

  /** Which of the parts that may be left out are seen. */
  options(shown) {
    this.shown = shown;
    const { view } = this;
    for (const name of view.parts.keys()) if (name.startsWith('scan:')) view.show(name, shown.scan ?? true);
    view.show('lines', shown.lines ?? true);
    view.show('knuckle', shown.lines ?? true);
    view.show('strut', shown.strut ?? true);
  }

  /** Near the nearest place, from where it is looked at now. */
  near(x, y, z) {
    const { camera, controls } = this.view, from = camera.position.clone().sub(controls.target).normalize();
    controls.target.set(x, y, z);
    camera.position.copy(controls.target).addScaledVector(from, 0.55);
    controls.update();
    this.view.redraw();
  }

  look(side) { this.view.look(side === 'inside' ? 'street' : side); if (side === 'inside') this.view.turn(Math.PI, 0); }

  zoom(factor) { this.view.zoom(factor); }

  dispose() { this.turn++; this.view.dispose(); }
}

/** a, 12, 3 to 12, a, 3. */
const SWAP = new THREE.Matrix4().set(0, 1, 0, 0, 1, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1);

function turned(outline, material) {
  const points = outline.map(([a, r]) => new THREE.Vector2(r, a));
  if (points.length) points.push(points[0].clone());
  return new THREE.Mesh(new THREE.LatheGeometry(points, 56), material);
}

function bar(a, b, radius, material) {
  const mesh = new THREE.Mesh(new THREE.CylinderGeometry(radius, radius, 1, 10, 1), material);
  lay(mesh, a, b);
  return mesh;
}

/** Lays a bar of unit length between two places. */
function lay(mesh, a, b) {
  const along = b.clone().sub(a), length = Math.max(1e-6, along.length());
  mesh.position.copy(a).addScaledVector(along, 0.5);
  mesh.scale.set(1, length, 1);
  mesh.quaternion.setFromUnitVectors(UP, length > 1e-5 ? along.divideScalar(length) : UP);
}
