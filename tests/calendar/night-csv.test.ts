import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import { NIGHT_CSV_HEADER, renderNightCsv } from '../../src/calendar/night-csv.ts';
import { renderNightRow } from '../../src/calendar/night-row.ts';
import { ESTUARY, sampleRules } from './sample-rules.ts';

describe('renderNightCsv', () => {
  const almanac = createAlmanac(sampleRules(), ESTUARY);
  const row = renderNightRow(almanac, almanac.nightOn('2026-07-29'));

  it('gives the columns of the header, in order', () => {
    expect(NIGHT_CSV_HEADER).toBe(
      'date,begins,ends,night,night-number,group,repeat,night-of-month,month,month-number,year,month-first-date,month-length,intercalary,moon-age-days,illuminated-fraction,phase,phase-at,sunset,sunrise,moonrise,moonset,basis',
    );
    expect(renderNightCsv(row)).toBe(
      '2026-07-29,2026-07-29T17:25:41+12:00,2026-07-30T17:26:37+12:00,Round Moon,16,High Water,false,16,Frost Month,2,2026,2026-07-14,29,false,14.82,0.998,full-moon,2026-07-30T02:36:19+12:00,2026-07-29T17:25:41+12:00,2026-07-30T07:33:08+12:00,,2026-07-30T07:54:16+12:00,computed',
    );
  });

  it('leaves what does not come empty', () => {
    expect(renderNightCsv({ ...row, phase: null })).toContain(',0.998,,,2026-07-29T17:25:41');
  });

  it.each([
    ['Low, then high', '"Low, then high"'],
    ['The "Round" Moon', '"The ""Round"" Moon"'],
    ['Two\nlines', '"Two\nlines"'],
    [' spaced ', ' spaced '],
    ['Nuit d’été', 'Nuit d’été'],
    ['=1+1', "'=1+1"],
    ['+Moon', "'+Moon"],
    ['-Moon, "thin"', `"'-Moon, ""thin"""`],
    ['@Moon', "'@Moon"],
    ['＝Moon', "'＝Moon"],
    ['Moon = Sun', 'Moon = Sun'],
  ])('writes %j as text, as RFC 4180 has it', (name, field) => {
    expect(renderNightCsv({ ...row, night: { ...row.night, name } })).toContain(`+12:00,${field},16,High Water`);
    expect(renderNightCsv({ ...row, night: { ...row.night, group: name } })).toContain(`,16,${field},false,16,`);
    expect(renderNightCsv({ ...row, month: { ...row.month, name } })).toContain(`,16,${field},2,2026,`);
  });
});
