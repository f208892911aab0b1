import { readFileSync } from 'node:fs';
import path from 'node:path';
import { answersFor, planBuild, type Plan, type Step } from '@rotorwright/build';
import { differences, readMachine } from '@rotorwright/machine';
import { describe, expect, it } from 'vitest';
import { barriers, pictures } from './harness.ts';
import { useWorkshop } from './workshop.ts';

/** A pinion swap, from the idea to the work that it makes. */

const { address, home, open } = useWorkshop();

const file = (): string => readFileSync(path.join(home, 'machines/whimbrel/machine.yaml'), 'utf8');

describe('a change', () => {
  it('is thought over from nothing: another pinion, beside a variant', async () => {
    const page = await open('/m/whimbrel/change');
    await page.getByRole('heading', { level: 1, name: 'Change' }).waitFor();
    expect(await barriers(page)).toEqual([]);
    await page.getByRole('button', { name: 'Try a change' }).last().click();
    await page.getByRole('dialog').getByRole('button', { name: /^15\b/u }).first().click();
    await page.getByRole('row', { name: /Speed of mast/u }).waitFor();
    // By hand: 14,250 rpm × 14/113 = 1,765 rpm; × 15/113 = 1,892 rpm, beyond the wanted 1,800 rpm.
    expect(await page.getByRole('row', { name: /Speed of mast/u }).innerText()).toMatch(/1,765 rpm → 1,892 rpm/u);
    expect(await page.locator('.sheet-answer').innerText()).toMatch(/newly exceeded/u);
    expect(await page.getByRole('region', { name: 'To sign again' }).getByRole('row').count()).toBeGreaterThan(3);
    expect(await barriers(page)).toEqual([]);
    await pictures(page, 'change');
    await page.getByRole('button', { name: 'Try a change' }).click();
    await page.getByRole('dialog').getByRole('radio', { name: 'A variant' }).check();
    await page.getByRole('dialog').getByRole('button', { name: 'Short blades and boom' }).click();
    await page.getByRole('region', { name: 'Side by side' }).waitFor();
    await expect.poll(() => page.getByRole('region', { name: 'Side by side' }).getByRole('columnheader').count()).toBe(4);
    expect(await barriers(page)).toEqual([]);
  });

  it('says which margins cross one, and opens them into their working', async () => {
    const page = await open('/m/whimbrel/change?idea=drive.main-mesh.width%3D9 mm');
    const row = page.getByRole('region', { name: 'Margins that cross one' }).getByRole('listitem').filter({ hasText: 'Main gear, flank' });
    await row.waitFor();
    expect(await row.innerText()).toMatch(/1\.0\d\d → 0\.\d+ · newly exceeded; hover governs/u);
    expect(await page.locator('.sheet-answer').innerText()).toMatch(/1 newly exceeded/u);
    expect(await barriers(page)).toEqual([]);
    await row.getByRole('button').press('Enter');
    await page.getByRole('dialog', { name: 'Main gear, flank' }).getByText(/Strength of the flank of main gear/u).first().waitFor();
    expect(await barriers(page)).toEqual([]);
  });

  it('says what is newly found: a measured hover that another mass reads anew', async () => {
    const page = await open('/m/whimbrel/change?idea=flown.hover.mass;machine.mass%3D7 kg', { dark: true });
    const found = page.getByRole('list', { name: 'Newly found' });
    await found.waitFor();
    expect(await found.innerText()).toMatch(/flown\.hover does not say with which mass it was measured: 7 kg/u);
    expect(await barriers(page)).toEqual([]);
  });

  it('that cannot be is refused in words', async () => {
    const page = await open('/m/whimbrel/change?idea=rotors.main.diameter%3Dlong');
    await page.getByText('This cannot be').waitFor();
    expect(await page.getByRole('alert').innerText()).toMatch(/diameter|long/u);
  });

  it('is turned into work: the file takes it, the signature falls, and it says why', async () => {
    const before = file();
    const page = await open('/m/whimbrel/change?idea=drive.main-mesh.driver.teeth%3D15');
    await page.getByRole('button', { name: 'Turn into work' }).click();
    const who = page.getByLabel('Who opens it');
    if (await who.count() > 0) await who.fill('M. Ode');
    await page.getByRole('button', { name: 'Do it' }).click();
    await page.getByRole('heading', { level: 1, name: 'Build' }).waitFor();
    await expect.poll(file).not.toBe(before);
    expect(file()).toContain('teeth: 15');
    await page.getByRole('button', { name: /^Undo/u }).click();
    await expect.poll(file).toBe(before);
  });

  it('that is a variant is turned into work: its entries become those of the file, and nothing else moves', async () => {
    const before = file();
    const page = await open('/m/whimbrel/change?idea=variant%3Ashort');
    await page.getByRole('button', { name: 'Turn into work' }).press('Enter');
    const entries = differences({ text: before }, { text: before, variant: 'short' });
    await page.getByText(`${entries.length} entries of the variant become its own`).waitFor();
    expect(await barriers(page)).toEqual([]);
    const who = page.getByLabel('Who opens it');
    if (await who.count() > 0) await who.fill('M. Ode');
    await page.getByRole('button', { name: 'Do it' }).click();
    await page.getByRole('heading', { level: 1, name: 'Build' }).waitFor();
    await expect.poll(file).not.toBe(before);
    // The file is now what its variant was; what it says besides stands as before, comments and all.
    const after = file();
    expect(differences({ text: before, variant: 'short' }, { text: after })).toEqual([]);
    expect(differences({ text: after }, { text: after, variant: 'short' })).toEqual([]);
    const comments = (text: string) => text.split('\n').flatMap((line) => /#.*$/u.exec(line)?.[0] ?? []);
    expect(comments(after)).toEqual(comments(before));
    // The file has 1546 mm, and its variant 1346 mm.
    expect(readMachine(after).machine?.rotors.get('main')?.diameter).toBeCloseTo(1.346, 9);
    await page.getByRole('button', { name: /^Undo/u }).click();
    await expect.poll(file).toBe(before);
    // Two whole machines are reckoned, and the file is saved twice.
  }, 120_000);
});

/** The plan of the file as it stands. */
function planNow(): Plan {
  const { machine } = readMachine(file());
  if (machine === undefined) throw new Error('the file cannot be read');
  return planBuild(machine);
}

/** A reading that is wanted, or the answer that is hoped for. */
const goodReading = ({ measure }: Step): object => {
  if (measure === undefined) return {};
  if (measure.ask !== undefined || measure.wanted !== undefined) return { measured: { feel: answersFor(measure).find(({ wanted }) => wanted)!.feel } };
  const least = measure.min ?? 0;
  return { measured: { value: (least + (measure.max ?? 2 * least)) / 2, unit: measure.unit } };
};

/** Enters signatures without the page, as a bench that was offline would. */
async function enter(entries: readonly object[]): Promise<void> {
  for (let from = 0; from < entries.length; from += 150) {
    const answer = await fetch(address('/api/machines/whimbrel/entries'), { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ entries: entries.slice(from, from + 150) }) });
    if (!answer.ok) throw new Error(await answer.text());
  }
}

interface StateAt {
  readonly states: Readonly<Record<string, { readonly state: string }>>;
  readonly total: Readonly<Record<string, number>>;
  readonly readiness: { readonly objections: readonly { readonly step: string; readonly why: string }[] };
}
async function stateAt(moment: number): Promise<StateAt> {
  const at = encodeURIComponent(new Date(moment).toISOString());
  return (await (await fetch(address(`/api/machines/whimbrel/state?at=${at}`))).json()) as StateAt;
}

const day = 86_400_000;

describe('a pinion swap', () => {
  it('goes from the idea to the last signature, at the desk and at the bench', async () => {
    // 1. A machine that was built, looked at twice, and stands signed.
    const begun = Date.now() - 60 * day;
    const built = [...planNow().steps.values()];
    const at = (after: number) => new Date(begun + after).toISOString();
    await enter(built.map((step, index) => ({ id: `entry-built-${index}`, machine: 'whimbrel', at: at(index * 60_000), by: 'M. Ode', body: { kind: 'signed', step: step.id, fingerprint: step.fingerprint, cure: step.cure, ...goodReading(step) } })));
    await enter(built.filter(({ secondLook }) => secondLook).map((step, index) => ({ id: `entry-looked-${index}`, machine: 'whimbrel', at: at(3 * day + index * 60_000), by: 'A. Rill', body: { kind: 'looked', step: step.id, fingerprint: step.fingerprint, found: 'good' } })));

    // 2. The idea, turned into work at the desk.
    const page = await open('/m/whimbrel/change?idea=drive.main-mesh.driver.teeth%3D13');
    await page.getByText(/signatures fall/u).first().waitFor();
    await page.getByRole('button', { name: 'Turn into work' }).click();
    await page.getByLabel('Who opens it').fill('M. Ode');
    await page.getByRole('button', { name: 'Do it' }).click();
    await page.getByRole('heading', { level: 1, name: 'Build' }).waitFor();
    await page.getByText(/\d+ undone/u).first().waitFor();
    await page.getByText(/Not to be flown/u).first().waitFor();

    // 3. What fell is the clutch and what was measured on it; the mast stays shut.
    const plan = planNow();
    const due = await stateAt(Date.now());
    const fallen = [...plan.steps.values()].filter(({ id }) => due.states[id]?.state === 'undone');
    expect(fallen.map(({ id }) => id)).toEqual(expect.arrayContaining(['clutch/pinion-thread', 'clutch/preload-nut', 'clutch/backlash']));
    expect(fallen.filter(({ module }) => module === 'mast')).toEqual([]);

    // 4. The bench opens at one of them; it is done and signed there.
    await page.getByRole('link', { name: 'Go on at the bench' }).click();
    await page.getByRole('button', { name: /^Sign step/u }).waitFor();
    // What comes apart before it can be done again is one tap away, and back.
    await page.getByText(/^Undone\. M\. Ode opened .*: change: Pinion 14 → 13\. Do it again and sign\.$/u).waitFor();
    await page.getByRole('link', { name: 'What comes apart first' }).click();
    await page.getByRole('dialog', { name: /^The way in to/u }).getByText('Undo the preload nut of the pinion.').waitFor();
    await page.goBack();
    await page.getByRole('button', { name: /^Sign step/u }).waitFor();
    const first = decodeURIComponent(new URL(page.url()).pathname.split('/').at(-1) ?? '');
    expect(fallen.map(({ id }) => id)).toContain(first);
    const rest = fallen.filter(({ id }) => id !== first);
    for (const tick of await page.getByRole('region', { name: 'Tick each one' }).getByRole('button').all()) await tick.click();
    await page.getByRole('button', { name: /^Sign step/u }).click();
    const who = page.getByLabel(/Your name/u);
    if (await who.isVisible()) {
      await who.fill('M. Ode');
      await page.getByRole('button', { name: 'Sign as this' }).click();
      await page.getByRole('button', { name: /^Sign step/u }).click();
    }
    await page.getByText(/^Signed.* by M\. Ode/u).waitFor();

    // 5. The others on the evenings after, each when what it waits for has cured; then a second pair of eyes.
    const evening = (index: number) => new Date(Date.now() + (index + 1) * (day + 3_600_000)).toISOString();
    await enter(rest.map((step, index) => ({ id: `entry-again-${index}`, machine: 'whimbrel', at: evening(index), by: 'M. Ode', body: { kind: 'signed', step: step.id, fingerprint: step.fingerprint, cure: step.cure, ...goodReading(step) } })));
    const end = Date.now() + 60 * day;
    expect((await stateAt(end)).readiness.objections.every(({ why }) => why === 'unseen')).toBe(true);
    await enter(fallen.filter(({ secondLook }) => secondLook).map((step, index) => ({ id: `entry-seen-${index}`, machine: 'whimbrel', at: evening(rest.length + index), by: 'A. Rill', body: { kind: 'looked', step: step.id, fingerprint: step.fingerprint, found: 'good' } })));
    const done = await stateAt(end);
    expect(done.total).toMatchObject({ open: 0, undone: 0, curing: 0, signed: plan.steps.size });
    expect(done.readiness.objections).toEqual([]);
    // Three hundred entries, each on the disk before the next.
  }, 240_000);
});
