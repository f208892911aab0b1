import { bearingWords, careNotes, careWants, meshWords, type Care, type Figure } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';

interface CareProps {
  readonly care: Care;
  readonly onOpen: (figure: string) => void;
}

/** Where to set each mesh, how warm each housing must be for its bearing, when it wants fresh grease. */
export function CareTables({ care: { set, meshes, bearings }, onOpen }: CareProps): ReactNode {
  if (meshes.length + bearings.length === 0) return null;
  const cell = (figure: Figure | undefined, what: string, significant = 3): ReactNode => (
    <td className="number">{figure && (
      <button type="button" className="figure-link" onClick={() => onOpen(figure.name)}>
        {figure.value === undefined ? '–' : showQuantity(figure.value, figure.shown, { significant })}<span className="unseen">, working of {what}</span>
      </button>
    )}</td>
  );
  const wants = careWants({ set, meshes, bearings });
  return (
    <section className="area">
      <div className="area-head"><h2>Care</h2><span className="small soft">each figure opens into its working</span></div>
      {meshes.length > 0 && (
        <div className="care" id="mesh-care" tabIndex={0} role="region" aria-label="Where to set the meshes">
          <table>
            <thead><tr><th scope="col">Mesh</th><th scope="col" className="number">set the axes to</th><th scope="col" className="number">backlash then</th><th scope="col" className="number">coldest</th><th scope="col" className="number">hottest</th><th scope="col">note</th></tr></thead>
            <tbody>{meshes.map((mesh) => (
              <tr key={mesh.coupling.id}>
                <th scope="row">{mesh.coupling.title}</th>
                {cell(mesh.distance, mesh.distance.title, 5)}{cell(mesh.backlash, mesh.backlash.title)}{cell(mesh.cold, mesh.cold.title)}{cell(mesh.hot, mesh.hot.title)}
                <td>{meshWords(mesh)}</td>
              </tr>
            ))}</tbody>
          </table>
          {wants.meshes !== undefined && <p className="small">{wants.meshes}</p>}
          <p className="small soft">{careNotes.meshes}</p>
        </div>
      )}
      {bearings.length > 0 && (
        <div className="care" id="bearing-care" tabIndex={0} role="region" aria-label="Warmth and grease of the bearings">
          <table>
            <thead><tr><th scope="col">Bearing</th><th scope="col" className="number">housing at</th><th scope="col" className="number">grease after</th><th scope="col" className="number">so much</th><th scope="col">note</th></tr></thead>
            <tbody>{bearings.map((bearing) => (
              <tr key={bearing.instance}>
                <th scope="row">{bearing.part.title}<span className="soft small"> {bearing.instance}</span></th>
                {cell(bearing.warmth, bearing.warmth.title)}{cell(bearing.interval, bearing.interval?.title ?? '')}{cell(bearing.grease, bearing.grease?.title ?? '', 2)}
                <td>{bearingWords(bearing)}</td>
              </tr>
            ))}</tbody>
          </table>
          {wants.bearings !== undefined && <p className="small">{wants.bearings}</p>}
          <p className="small">{careNotes.warmth}</p>
          <p className="small soft">{careNotes.grease}</p>
        </div>
      )}
    </section>
  );
}
