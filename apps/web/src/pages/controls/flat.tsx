import { useState, type ReactNode } from 'react';
import type { Vector3 } from '@rotorwright/mechanics';
import type { Scene } from './scene.ts';

/** From where one looks: what goes to the right and what goes up on the paper. Forward is always left. */
const views = {
  side: { title: 'From the left', right: [-1, 0, 0], up: [0, 0, 1] },
  front: { title: 'From the front', right: [0, 1, 0], up: [0, 0, 1] },
  above: { title: 'From above', right: [-1, 0, 0], up: [0, -1, 0] },
} as const satisfies Readonly<Record<string, { readonly title: string; readonly right: Vector3; readonly up: Vector3 }>>;

const along = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const mm = 1000;

type ViewName = keyof typeof views;

/** The scene on paper: two views in one scale, no shading. */
export function Flat({ scene, tail, label }: { readonly scene: Scene; readonly tail: boolean; readonly label: string }): ReactNode {
  const shown: readonly ViewName[] = tail ? ['above', 'front'] : ['side', 'front'];
  // The frame stays where the first picture put it, so that only the controls move.
  const [boxes] = useState(() => boxesOf(scene, shown));
  return (
    <div className="flat">
      {shown.map((name, index) => (
        <figure key={name}>
          <View scene={scene} name={name} box={boxes[index]!} label={`${label}, ${views[name].title.toLowerCase()}`} />
          <figcaption>{views[name].title}</figcaption>
        </figure>
      ))}
    </div>
  );
}

/** mm */
interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const put = (at: Vector3, { right, up }: (typeof views)[ViewName]): readonly [number, number] => [mm * along(at, right), -mm * along(at, up)];

function View({ scene: { faces, pieces, balls }, name, box, label }: { readonly scene: Scene; readonly name: ViewName; readonly box: Box; readonly label: string }): ReactNode {
  const view = views[name];
  return (
    <svg viewBox={`${box.left} ${box.top} ${box.width} ${box.height}`} role="img" aria-label={label} className="flat-view">
      {faces.map(({ corners }, index) => <polygon key={index} className="face" points={corners.map((corner) => put(corner, view).join(',')).join(' ')} />)}
      {pieces.map(({ from, to, radius, ink }, index) => {
        const [[x1, y1], [x2, y2]] = [put(from, view), put(to, view)];
        return <line key={index} className={ink} {...{ x1, y1, x2, y2 }} strokeWidth={Math.max(0.5, 2 * mm * radius)} />;
      })}
      {balls.map(({ at, radius, ink }, index) => {
        const [cx, cy] = put(at, view);
        return <circle key={index} className={ink} {...{ cx, cy }} r={mm * radius} />;
      })}
    </svg>
  );
}

const margin = 10;

/** What each view shows, around its own middle, all as wide and as high as the largest needs. */
function boxesOf({ pieces, faces }: Scene, shown: readonly ViewName[]): readonly Box[] {
  const extents = shown.map((name) => {
    const points = [...pieces.flatMap(({ from, to }) => [from, to]), ...faces.flatMap(({ corners }) => corners)].map((point) => put(point, views[name]));
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
  });
  const width = Math.max(...extents.map(({ left, right }) => right - left)) + 2 * margin;
  const height = Math.max(...extents.map(({ top, bottom }) => bottom - top)) + 2 * margin;
  return extents.map(({ left, right, top, bottom }) => ({ left: (left + right - width) / 2, top: (top + bottom - height) / 2, width, height }));
}
