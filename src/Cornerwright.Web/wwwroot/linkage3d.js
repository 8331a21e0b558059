// The linkage of one corner in a view3d view: rods, arms, strut, spring, damper, rack, wheel carrier, wheel and tyre,
// ground, steering axis, instant axis, roll centre. Which joints they run between comes from the server once; where the
// joints are comes with every pose, as 32-bit floats.
import * as THREE from 'three';
import { open } from './view3d.js';

const UP = new THREE.Vector3(0, 1, 0);
const THICK = { rod: 0.009, arm: 0.009, tie: 0.008, carrier: 0.011, strut: 0.024, damper: 0.017, pushrod: 0.007, rocker: 0.01, rack: 0.014, bar: 0.009 };
const TOKEN = { rod: 'ink', arm: 'ink', tie: 'accent', rack: 'accent', carrier: 'now', strut: 'ink-2', damper: 'ink-2', spring: 'new', pushrod: 'ink', rocker: 'now', bar: 'ink' };
const COILS = 7;

/**
 * @param {HTMLElement} host
 * @param {object} plan side, joints (names), members {kind, name, a, b, from}, plates (three joints each), tyre and rim (outlines a, r).
 * @returns {Promise<object|null>} null where the browser cannot draw in three dimensions.
 */
export function show(host, plan) {
  if (!host) return null;   // the page was left meanwhile
  const view = open(host, { side: plan.side });
  return view && new Linkage(view, plan);
}

class Linkage {
  constructor(view, plan) {
    Object.assign(this, { view, plan, members: [], plates: [], balls: [] });
    view.host.dataset.view = 'open';
    this.build(plan);
    this.rayFrom = new THREE.Raycaster();
    this.onMove = event => this.point(event);
    view.renderer.domElement.addEventListener('pointermove', this.onMove);
  }

  build(plan) {
    this.plan = plan;
    const { view } = this;
    for (const name of [...view.parts.keys()]) if (name.startsWith('linkage')) view.remove(name);
    this.members = plan.members.map(m => ({ ...m, parts: this.memberParts(m) }));
    const links = new THREE.Group();
    for (const m of this.members) links.add(...m.parts);
    view.add('linkage', links);

    this.plates = plan.plates.map(joints => {
      const shape = new THREE.BufferGeometry();
      shape.setAttribute('position', new THREE.BufferAttribute(new Float32Array(9), 3));
      return { joints, mesh: new THREE.Mesh(shape, view.material('ink-2', { opacity: 0.22, flat: true })) };
    });
    const plates = new THREE.Group();
    if (this.plates.length) plates.add(...this.plates.map(p => p.mesh));
    view.add('linkage-plates', plates);

    const balls = new THREE.Group();
    this.balls = plan.joints.map(name => {
      const ball = new THREE.Mesh(new THREE.SphereGeometry(0.013, 18, 12), view.material('accent'));
      ball.userData.name = name;
      balls.add(ball);
      return ball;
    });
    view.add('linkage-joints', balls);
    this.buildWheel(plan);
    this.buildGround();
    this.axis = this.line('linkage-steering', 'fails');
    this.instant = this.line('linkage-instant', 'tight');
    this.roll = view.add('linkage-roll', new THREE.Mesh(new THREE.OctahedronGeometry(0.02), view.material('tight')));
    for (const part of [this.axis, this.instant, this.roll]) part.userData.unbounded = true;
  }

  memberParts(m) {
    const { view } = this, material = view.material(TOKEN[m.kind] ?? 'ink');
    if (m.kind === 'spring') return [new THREE.Mesh(coil(m.radius ?? 0.055), material)];
    const bar = radius => new THREE.Mesh(new THREE.CylinderGeometry(radius, radius, 1, 18, 1), material);
    if (m.kind === 'strut' || m.kind === 'damper') {
      const rod = new THREE.Mesh(new THREE.CylinderGeometry(THICK[m.kind] * 0.45, THICK[m.kind] * 0.45, 1, 14, 1), view.material('line-2'));
      return [bar(THICK[m.kind]), rod];
    }
    return [bar(THICK[m.kind] ?? 0.009)];
  }

  buildWheel(plan) {
    const { view } = this;
    const turned = (outline, material) => {
      const points = outline.map(([a, r]) => new THREE.Vector2(r, a));
      points.push(points[0].clone());
      return new THREE.Mesh(new THREE.LatheGeometry(points, 48), material);
    };
    const wheel = new THREE.Group();
    if (plan.tyre?.length) wheel.add(turned(plan.tyre, view.material('ink-2', { opacity: 0.24, both: true })));
    if (plan.rim?.length) wheel.add(turned(plan.rim, view.material('now', { opacity: 0.34, both: true })));
    this.wheel = view.add('linkage-wheel', wheel);
  }

  buildGround() {
    const grid = new THREE.GridHelper(1.2, 12);
    grid.material.dispose();
    grid.material = this.view.material('line-2', { lines: true, opacity: 0.55 });
    grid.geometry.deleteAttribute('color');
    grid.rotation.x = Math.PI / 2;
    grid.userData.unbounded = true;
    this.ground = this.view.add('linkage-ground', grid);
  }

  line(name, token) {
    const shape = new THREE.BufferGeometry();
    shape.setAttribute('position', new THREE.BufferAttribute(new Float32Array(6), 3));
    const line = new THREE.Line(shape, this.view.material(token, { lines: true }));
    line.frustumCulled = false;
    return this.view.add(name, line);
  }

  /** A new table: other joints, members or wheel. */
  replan(plan, pose) { this.build(plan); this.pose(pose); if (this.shown) this.options(this.shown); }

  /**
   * One pose: joints, centre of the hub face, spindle, contact, steering axis (point, direction), instant axis (point, direction),
   * roll centre's height; the last five carry a flag whether there are such things. Bytes of 32-bit floats, little-endian.
   */
  pose(bytes) {
    const f = new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
    const n = this.plan.joints.length;
    if (f.length !== 3 * (n + 1) + 3 + 3 + 7 + 7 + 2) return;
    const at = i => new THREE.Vector3(f[3 * i], f[3 * i + 1], f[3 * i + 2]);
    let k = 3 * n;
    const next = () => { const v = new THREE.Vector3(f[k], f[k + 1], f[k + 2]); k += 3; return v; };
    const hub = next(), spindle = next(), contact = next();
    const place = i => i === n ? hub : at(i);
    for (const m of this.members) this.placeMember(m, place(m.a), place(m.b));
    for (const { joints, mesh } of this.plates) {
      joints.forEach((j, i) => mesh.geometry.attributes.position.setXYZ(i, ...place(j).toArray()));
      mesh.geometry.attributes.position.needsUpdate = true;
      mesh.geometry.computeBoundingSphere();
    }
    this.balls.forEach((ball, i) => ball.position.copy(at(i)));
    this.wheel.position.copy(hub);
    this.wheel.quaternion.setFromUnitVectors(UP, spindle);
    this.view.setPose(hub.toArray(), this.wheel.quaternion.toArray());
    this.ground.position.set(contact.x, contact.y, contact.z);

    const hasAxis = f[k++] > 0, axisAt = next(), axisUp = next();
    stretch(this.axis, axisAt, axisUp, contact.z, 1.0);
    const hasInstant = f[k++] > 0, instantAt = next(), along = next();
    between(this.instant, instantAt.clone().addScaledVector(along, -0.7), instantAt.clone().addScaledVector(along, 0.7));
    const hasRoll = f[k++] > 0;
    this.roll.position.set(contact.x, 0, f[k]);
    this.has = { axis: hasAxis, instant: hasInstant, roll: hasRoll };
    this.options(this.shown ?? {});
    this.view.host.dataset.hub = hub.toArray().map(x => x.toFixed(4)).join(' ');
    this.view.redraw();
    if (!this.looked) { this.looked = true; this.view.look('corner'); }
  }

  placeMember(m, a, b) {
    if (m.kind === 'rack') {
      // The rack runs from the tie rod's inner joint toward the middle of the car.
      lay(m.parts[0], a, new THREE.Vector3(a.x, a.y * 0.25, a.z));
    } else if (m.kind === 'spring') {
      // The coil sits between two shares of the line, so that a strut's spring stands above its perch.
      lay(m.parts[0], a.clone().lerp(b, m.from ?? 0), b);
    } else if (m.kind === 'strut' || m.kind === 'damper') {
      // The tube keeps its length; the rod is what is left.
      m.tube ??= a.distanceTo(b) * 0.5;
      const up = b.clone().sub(a).normalize();
      lay(m.parts[0], a, a.clone().addScaledVector(up, m.tube));
      lay(m.parts[1], a.clone().addScaledVector(up, m.tube), b);
    } else {
      lay(m.parts[0], a, b);
    }
  }

  /** Which of the parts that may be left out are seen. */
  options(shown) {
    this.shown = shown;
    const { view, has = {} } = this;
    view.show('linkage-wheel', shown.wheel ?? true);
    view.show('linkage-ground', shown.ground ?? true);
    view.show('linkage-steering', (shown.axis ?? false) && !!has.axis);
    view.show('linkage-instant', (shown.instant ?? false) && !!has.instant);
    view.show('linkage-roll', (shown.roll ?? false) && !!has.roll);
  }

  /** Makes one joint stand out: the one whose row is being typed in. -1 for none. */
  highlight(joint) {
    this.balls.forEach((ball, i) => ball.scale.setScalar(i === joint ? 1.9 : 1));
    this.view.redraw();
  }

  look(side) { this.view.look(side); }

  zoom(factor) { this.view.zoom(factor); }

  point(event) {
    const { view } = this, box = view.renderer.domElement.getBoundingClientRect();
    const x = (event.clientX - box.left) / box.width * 2 - 1, y = 1 - (event.clientY - box.top) / box.height * 2;
    this.rayFrom.setFromCamera(new THREE.Vector2(x, y), view.camera);
    const hit = this.rayFrom.intersectObjects(this.balls, false)[0];
    view.renderer.domElement.title = hit ? hit.object.userData.name : '';
  }

  drawn() { return this.view.drawn; }

  dispose() {
    this.view.renderer.domElement.removeEventListener('pointermove', this.onMove);
    this.view.dispose();
  }
}

function lay(mesh, a, b) {
  const along = b.clone().sub(a), length = Math.max(1e-6, along.length());
  mesh.position.copy(a).addScaledVector(along, 0.5);
  mesh.scale.set(1, length, 1);
  mesh.quaternion.setFromUnitVectors(UP, along.divideScalar(length));
}

function between(line, a, b) {
  line.geometry.attributes.position.setXYZ(0, a.x, a.y, a.z);
  line.geometry.attributes.position.setXYZ(1, b.x, b.y, b.z);
  line.geometry.attributes.position.needsUpdate = true;
}

/** From the ground along a direction, upward. */
function stretch(line, point, up, ground, length) {
  if (!(Math.abs(up.z) > 1e-3)) return;
  const foot = point.clone().addScaledVector(up, (ground - point.z) / up.z);
  between(line, foot, foot.clone().addScaledVector(up, length));
}

/** A coil of unit length along Y about the origin. */
function coil(radius) {
  class Turns extends THREE.Curve {
    getPoint(t, to = new THREE.Vector3()) {
      const angle = 2 * Math.PI * COILS * t;
      return to.set(radius * Math.cos(angle), t - 0.5, radius * Math.sin(angle));
    }
  }
  return flattened(new THREE.TubeGeometry(new Turns(), COILS * 20, 0.006, 6, false));
}

/** The tube was made on a coil one metre long; on a short one it would be squeezed, so it is made that much taller. */
function flattened(shape) {
  const position = shape.attributes.position;
  const center = new THREE.Vector3(), curve = shape.parameters.path;
  const rings = COILS * 20 + 1, around = 7;
  for (let i = 0; i < rings; i++) {
    curve.getPoint(i / (rings - 1), center);
    for (let j = 0; j < around; j++) {
      const k = i * around + j;
      position.setY(k, center.y + (position.getY(k) - center.y) * 4);
    }
  }
  position.needsUpdate = true;
  shape.computeVertexNormals();
  return shape;
}
