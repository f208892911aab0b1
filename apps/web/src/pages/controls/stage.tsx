import { useEffect, useRef, useState, type ReactNode } from 'react';
import { AmbientLight, BufferAttribute, BufferGeometry, Color, CylinderGeometry, DirectionalLight, DoubleSide, Group, Mesh, MeshLambertMaterial, OrthographicCamera, Scene as Stage3, SphereGeometry, Vector3, WebGLRenderer } from 'three';
import type { Ink, Scene } from './scene.ts';

export interface StageProps {
  readonly scene: Scene;
  readonly label: string;
  /** Where one stands: turn about the upright from behind, and height above the level, rad. */
  readonly turn: number;
  readonly rise: number;
  readonly onLook: (turn: number, rise: number) => void;
  /** There is no way to draw it here. */
  readonly onFail: () => void;
}

/** Token that each ink is drawn in. */
const inks: Readonly<Record<Ink, string>> = { still: '--line', servo: '--ink', rod: '--ink2', plate: '--act', blade: '--line', marked: '--exceeded' };
const up = new Vector3(0, 1, 0);

/** Swashplate, links and grips in space. Drawn anew only when something was moved by hand. */
export default function Stage({ scene, label, turn, rise, onLook, onFail }: StageProps): ReactNode {
  const frame = useRef<HTMLDivElement>(null);
  const [drawing, setDrawing] = useState<Drawing>();
  useEffect(() => {
    if (!frame.current) return undefined;
    const made = drawingIn(frame.current);
    if (!made) {
      onFail();
      return undefined;
    }
    setDrawing(made);
    return () => made.close();
  }, [onFail]);
  useEffect(() => drawing?.show(scene), [drawing, scene]);
  useEffect(() => drawing?.look(turn, rise), [drawing, turn, rise]);
  const drag = useRef<{ readonly x: number; readonly y: number; readonly turn: number; readonly rise: number }>(undefined);
  return (
    <div
      ref={frame} className="stage" role="img" aria-label={label}
      onPointerDown={(event) => {
        drag.current = { x: event.clientX, y: event.clientY, turn, rise };
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={(event) => {
        const from = drag.current;
        if (from) onLook(from.turn - (event.clientX - from.x) / 150, Math.min(1.5, Math.max(-1.5, from.rise + (event.clientY - from.y) / 150)));
      }}
      onPointerUp={() => (drag.current = undefined)}
      onPointerCancel={() => (drag.current = undefined)}
    />
  );
}

interface Drawing {
  readonly show: (scene: Scene) => void;
  readonly look: (turn: number, rise: number) => void;
  readonly close: () => void;
}

function drawingIn(frame: HTMLElement): Drawing | undefined {
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('webgl2', { antialias: true, alpha: true });
  if (!context) return undefined;
  const renderer = new WebGLRenderer({ canvas, context });
  renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
  canvas.setAttribute('aria-hidden', 'true');
  frame.append(canvas);
  const space = new Stage3();
  const light = new DirectionalLight(0xffffff, 2.2);
  space.add(new AmbientLight(0xffffff, 1.6), light);
  const camera = new OrthographicCamera();
  const rod = new CylinderGeometry(1, 1, 1, 14);
  const ball = new SphereGeometry(1, 18, 12);
  const materials = new Map<Ink, MeshLambertMaterial>();
  const material = (ink: Ink): MeshLambertMaterial => {
    let found = materials.get(ink);
    if (!found) materials.set(ink, (found = new MeshLambertMaterial({ color: colourOf(frame, inks[ink]), side: DoubleSide })));
    return found;
  };
  let shown = new Group();
  let size = 0;
  const middle = new Vector3();
  const from = { turn: 0, rise: 0 };

  const draw = (): void => {
    const { clientWidth: width, clientHeight: height } = frame;
    if (width === 0 || height === 0 || size === 0) return;
    renderer.setSize(width, height, false);
    const half = size / Math.min(1, width / height);
    Object.assign(camera, { left: (-half * width) / height, right: (half * width) / height, top: half, bottom: -half, near: 0.001, far: 10 });
    const way = new Vector3(Math.cos(from.rise) * -Math.cos(from.turn), Math.cos(from.rise) * -Math.sin(from.turn), Math.sin(from.rise));
    camera.up.set(0, 0, 1);
    camera.position.copy(middle).addScaledVector(way, 2);
    camera.lookAt(middle);
    camera.updateProjectionMatrix();
    light.position.copy(way).add(new Vector3(0.3, 0.4, 0.9));
    renderer.render(space, camera);
  };
  const show = ({ pieces, balls, faces }: Scene): void => {
    const next = new Group();
    for (const { from: start, to, radius, ink } of pieces) {
      const [a, b] = [new Vector3(...start), new Vector3(...to)];
      const mesh = new Mesh(rod, material(ink));
      mesh.position.copy(a).add(b).multiplyScalar(0.5);
      mesh.scale.set(radius, a.distanceTo(b), radius);
      mesh.quaternion.setFromUnitVectors(up, b.sub(a).normalize());
      next.add(mesh);
    }
    for (const { at, radius, ink } of balls) {
      const mesh = new Mesh(ball, material(ink));
      mesh.position.set(...at);
      mesh.scale.setScalar(radius);
      next.add(mesh);
    }
    for (const { corners, ink } of faces) {
      const shape = new BufferGeometry();
      shape.setAttribute('position', new BufferAttribute(new Float32Array([0, 1, 2, 0, 2, 3].flatMap((index) => [...corners[index]!])), 3));
      shape.computeVertexNormals();
      next.add(new Mesh(shape, material(ink)));
    }
    space.remove(shown);
    for (const { geometry } of shown.children as Mesh[]) if (geometry !== rod && geometry !== ball) geometry.dispose();
    shown = next;
    space.add(shown);
    if (size === 0) {
      // The first picture sets the frame, so that only the controls move.
      const points = [...pieces.flatMap((piece) => [piece.from, piece.to]), ...faces.flatMap(({ corners }) => corners)];
      const [low, high] = [[0, 1, 2].map((axis) => Math.min(...points.map((point) => point[axis]!))), [0, 1, 2].map((axis) => Math.max(...points.map((point) => point[axis]!)))];
      middle.set((low[0]! + high[0]!) / 2, (low[1]! + high[1]!) / 2, (low[2]! + high[2]!) / 2);
      size = (0.42 * Math.hypot(high[0]! - low[0]!, high[1]! - low[1]!, high[2]! - low[2]!)) || 0.1;
    }
    draw();
  };
  const observer = new ResizeObserver(draw);
  observer.observe(frame);
  // By night the inks change over.
  const recolour = (): void => {
    for (const [ink, each] of materials) each.color = colourOf(frame, inks[ink]);
    draw();
  };
  const night = window.matchMedia('(prefers-color-scheme: dark)');
  night.addEventListener('change', recolour);
  const themed = new MutationObserver(recolour);
  themed.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  return {
    show,
    look: (turn, rise) => {
      Object.assign(from, { turn, rise });
      draw();
    },
    close: () => {
      observer.disconnect();
      themed.disconnect();
      night.removeEventListener('change', recolour);
      for (const { geometry } of shown.children as Mesh[]) geometry.dispose();
      for (const each of materials.values()) each.dispose();
      ball.dispose();
      rod.dispose();
      renderer.dispose();
      canvas.remove();
    },
  };
}

/** A token as a colour: what the browser makes of it here. */
function colourOf(frame: HTMLElement, token: string): Color {
  const probe = document.createElement('span');
  probe.style.color = `var(${token})`;
  frame.append(probe);
  const colour = new Color(getComputedStyle(probe).color);
  probe.remove();
  return colour;
}
