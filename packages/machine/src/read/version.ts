import type { Report } from './report.ts';
import type { MapNode } from './tree.ts';

/** Format that this program writes and reads. */
export const currentVersion = 1;

/** From one format to the next. Kept for ever, so that old files stay readable. */
type Migration = (root: MapNode) => MapNode;

/** Index 0 leads from format 1 to format 2, and so on; format 1 is the first. */
const migrations: readonly Migration[] = [];

/**
 * Brings a file of an older format up to date.
 *
 * @returns undefined when the file is of a format that this program does not know; that is reported
 */
export function migrate(root: MapNode, report: Report): MapNode | undefined {
  const entry = root.entries.get('rotorwright');
  const version = entry?.node.kind === 'scalar' ? entry.node.value : undefined;
  if (entry && typeof version === 'number' && (version > currentVersion || version < 1 || !Number.isInteger(version))) {
    report.at('version/unknown', 'rotorwright', entry.node, { version, known: currentVersion });
    return undefined;
  }
  const from = typeof version === 'number' ? version : currentVersion;
  return migrations.slice(from - 1).reduce((older, step) => step(older), root);
}
