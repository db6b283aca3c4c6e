import { describe, expect, it } from 'vitest';
import { withTimes } from './with-times.ts';

const at = (text: string) => Date.parse(text) / 1000;

describe('dates that leave their order open', () => {
  it.each([
    ['in one column', 'UTC', ['06/05/2026 11:59:59 PM', '06/06/2026 12:00:00 AM']],
    ['in two columns', 'Date;UTC time', ['06/05/2026;11:59:59 PM', '06/06/2026;12:00:00 AM']],
  ])('are month first beside a clock of 12 hours, %s, and that is said', async (_, header, rows) => {
    const log = await withTimes(header, rows);
    expect([...log.timeS]).toEqual([at('2026-06-05T23:59:59Z'), at('2026-06-06T00:00:00Z')]);
    const [told] = log.issues;
    expect(told).toMatchObject({ code: 'date-order-assumed', severity: 'caution' });
    expect(told!.message).toMatch(/taken as month, day, year, since the clock is one of 12 hours\.$/);
    expect(told!.tip).toContain('--date-order dmy');
  });

  it('are day first beside a clock of 24 hours, and that is said', async () => {
    const log = await withTimes('UTC', ['06/05/2026 23:59:59']);
    expect(log.timeS[0]).toBe(at('2026-05-06T23:59:59Z'));
    expect(log.issues[0]!.tip).toContain('--date-order mdy');
  });

  it('are as the user says, whatever the clock', async () => {
    const log = await withTimes('UTC', ['06/05/2026 1:00:00 PM'], { dateOrder: 'dmy' });
    expect([log.timeS[0], log.issues]).toEqual([at('2026-05-06T13:00:00Z'), []]);
  });

  it('are as another date of the file decides, whatever the clock', async () => {
    const log = await withTimes('UTC', ['06/05/2026 1:00:00 PM', '13/05/2026 1:00:00 PM']);
    expect([log.timeS[0], log.issues]).toEqual([at('2026-05-06T13:00:00Z'), []]);
  });

  it('are day first with dots, whatever the clock', async () => {
    const log = await withTimes('UTC', ['06.05.2026 1:00:00 PM']);
    expect([log.timeS[0], log.issues]).toEqual([at('2026-05-06T13:00:00Z'), []]);
  });

  it('of a stated start are month first beside a clock of 12 hours too', async () => {
    const log = await withTimes('Elapsed', ['0'], { timeZone: 'UTC' }, 'Start: 06/05/2026 1:00:00 PM\n');
    expect(log.timeS[0]).toBe(at('2026-06-05T13:00:00Z'));
  });
});
