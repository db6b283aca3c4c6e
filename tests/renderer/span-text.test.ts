import { describe, expect, it } from 'vitest';
import { isOutside, momentsOf, spanFrom, spanWords } from '../../renderer/state/span-text.ts';
import { debriefOf } from '../core/debrief/drawn.ts';

const LOG = { startUtc: '2026-03-14T09:00:00.600Z', endUtc: '2026-03-14T10:30:00.200Z' };
const OVERNIGHT = { startUtc: '2026-03-14T23:50:00Z', endUtc: '2026-03-15T00:20:00Z' };
const s = (utc: string) => Date.parse(utc) / 1000;

describe('a span as it is typed', () => {
  it('is two clock times of the log', () => {
    expect(spanFrom('09:10:00', ' 9:10:30 ', LOG)).toEqual({
      span: { startS: s('2026-03-14T09:10:00Z'), endS: s('2026-03-14T09:10:30Z') },
    });
  });

  it('may be all of the log, whose ends are printed as whole seconds', () => {
    expect(spanFrom('09:00:00', '10:30:01', LOG).span).toEqual({
      startS: s('2026-03-14T09:00:00Z'),
      endS: s('2026-03-14T10:30:01Z'),
    });
    expect(spanFrom('08:59:59', '10:30:02', LOG).span).toBeNull();
  });

  it('may go past midnight', () => {
    expect(spanFrom('23:59:50', '00:00:10', OVERNIGHT).span).toEqual({
      startS: s('2026-03-14T23:59:50Z'),
      endS: s('2026-03-15T00:00:10Z'),
    });
    expect(spanFrom('00:05:00', '00:06:00', OVERNIGHT).span!.startS).toBe(s('2026-03-15T00:05:00Z'));
  });

  it('in a log of more than a day ends at the next such time after it begins', () => {
    const long = { startUtc: '2026-03-14T09:00:00Z', endUtc: '2026-03-15T12:00:00Z' };
    expect(spanFrom('22:00:00', '09:30:00', long).span).toEqual({
      startS: s('2026-03-14T22:00:00Z'),
      endS: s('2026-03-15T09:30:00Z'),
    });
  });

  it.each(['', 'noon', '9:10', '09:60:00', '09:10:60', '24:00:00', '09.10.00', '-09:10:00'])(
    '"%s" is no time, and that is said beside the field',
    (text) => {
      expect(spanFrom(text, '09:10:00', LOG)).toEqual({
        span: null,
        start: expect.stringContaining('hours, minutes and seconds') as unknown,
        end: null,
      });
      expect(spanFrom('09:10:00', text, LOG)).toMatchObject({ span: null, start: null });
    },
  );

  it('outside the log is refused with the times of the log, each by its own field', () => {
    expect(spanFrom('08:10:00', 'x', LOG)).toEqual({
      span: null,
      start: 'This log runs from 09:00:00 to 10:30:00.',
      end: expect.stringContaining('hours') as unknown,
    });
    expect(spanFrom('09:10:00', '11:00:00', LOG)).toMatchObject({
      span: null,
      start: null,
      end: 'This log runs from 09:00:00 to 10:30:00.',
    });
  });

  it.each(['09:10:00', '09:09:59'])('that ends at %s, no later than it begins, is refused', (end) => {
    expect(spanFrom('09:10:00', end, LOG)).toEqual({
      span: null,
      start: null,
      end: 'It has to end after it begins.',
    });
  });

  it('is written as it is typed, and known to be outside a log that is read otherwise since', () => {
    const { span } = spanFrom('09:10:00', '09:10:30', LOG);
    expect(spanWords(span!)).toBe('09:10:00 to 09:10:30');
    expect(isOutside(span!, LOG)).toBe(false);
    expect(isOutside(span!, OVERNIGHT)).toBe(true);
    expect(isOutside({ startS: 0, endS: s(LOG.startUtc) }, LOG)).toBe(true);
    expect(isOutside({ startS: s(LOG.endUtc) - 1, endS: s(LOG.endUtc) + 60 }, LOG)).toBe(false);
  });
});

describe('the times that are offered', () => {
  it('are those of the moments, each once, by their names, and each can be typed', () => {
    const { approaches, log } = debriefOf();
    const moments = momentsOf([...approaches, ...approaches]);
    expect(moments.length).toBeGreaterThan(3);
    expect(new Set(moments.map(([clock]) => clock)).size).toBe(moments.length);
    expect(moments.map(([, words]) => words).join()).toContain('Final approach fix');
    for (const [clock] of moments.slice(1)) expect(spanFrom(moments[0]![0], clock, log).span).not.toBeNull();
  });
});
