/** The players to begin with hold against their records, by distance and by direction; their families by distance alone. */
import { describe, expect, it } from 'vitest';
import {
  type ComparedFigure,
  compareWithRecord,
  FITTED_FAMILIES,
  FITTED_PLAYERS,
  familyOf,
  feetToMetres,
  misfitOf,
  type Player,
  PRESETS,
  type PublishedPlayer,
  planeSurface,
  playerOfHandicap,
  presetOf,
} from '../../../sim/index.ts';
import { Strokes } from '../../../sim/odds/stroke-errors.ts';
import { sized } from '../../support/size.ts';

/** Some seconds for each record: made once. */
const compared = new Map<PublishedPlayer, readonly ComparedFigure[]>();
const comparedOf = (record: PublishedPlayer): readonly ComparedFigure[] => {
  const rows = compared.get(record) ?? compareWithRecord(record, FITTED_PLAYERS[record]);
  compared.set(record, rows);
  return rows;
};
const rowsOf = (record: PublishedPlayer, what: ComparedFigure['figure']['what']): ComparedFigure[] =>
  comparedOf(record).filter(({ figure }) => figure.what === what);

describe('the tour preset', () => {
  it('holes within 1.5 points of every row of the tour table from 2 to 40 ft (Broadie, in Gelman 2019)', () => {
    const rows = rowsOf('tour', 'holed').filter(({ figure }) => figure.feet < 41);
    expect(rows).toHaveLength(22);
    // The aim set for the fit; chance alone is 0.1 to 0.3 points in these rows.
    for (const { figure, ours } of rows)
      expect(Math.abs(ours - figure.value), `${figure.feet} ft`).toBeLessThan(0.015);
  });

  it('needs the mean putts of Broadie 2014 within 0.03 from 3 to 60 ft', () => {
    const rows = rowsOf('tour', 'meanPutts');
    expect(rows).toHaveLength(11);
    // The aim set for the fit; most of the figures are from memory.
    for (const { figure, ours } of rows)
      expect(Math.abs(ours - figure.value), `${figure.feet} ft`).toBeLessThan(0.03);
  });

  it('three-putts within a point and a fifth of what Broadie 2014 gives', () => {
    const rows = rowsOf('tour', 'threePutt');
    expect(rows).toHaveLength(10);
    // Whole per cents from memory, greens and years that differ: ours.
    for (const { figure, ours } of rows)
      expect(Math.abs(ours - figure.value), `${figure.feet} ft`).toBeLessThan(0.01 + 0.2 * figure.value);
  });

  it('from 8 ft holes 2 to 8 points more uphill than downhill over the mix (Broadie 2019: 5 percent more often)', () => {
    const [{ ours }] = rowsOf('tour', 'upLessDown');
    // Whether "percent" means points or a ratio of 50% is not said: the range holds both.
    expect(ours).toBeGreaterThan(0.02);
    expect(ours).toBeLessThan(0.08);
  });

  it('from 8 ft on 3% holes 10 to 25% less sidehill-downhill than sidehill-uphill (Broadie 2019: almost 20 percent less often)', () => {
    const [{ ours }] = rowsOf('tour', 'downOverUp');
    expect(ours).toBeGreaterThan(0.75);
    expect(ours).toBeLessThan(0.9);
  });

  it('leaves missed 10-footers a median 1.6 ft away, on 3% 1.1 ft uphill and 2.1 ft downhill (Broadie 2020)', () => {
    const leaves = rowsOf('tour', 'leaveFeet');
    expect(leaves).toHaveLength(3);
    // The study's putts lie on many green speeds, printed to a tenth: 0.3 ft, as asked.
    for (const { figure, ours } of leaves)
      expect(Math.abs(ours - figure.value), figure.on?.direction).toBeLessThan(0.3);
  });

  it('leaves fewer 10-footers short than the 7% published, by 3 points, as MODEL.md admits', () => {
    const [{ ours, figure }] = rowsOf('tour', 'short');
    expect(Math.abs(ours - figure.value)).toBeLessThan(0.035);
  });
});

describe('a player of handicap 2.8', () => {
  it('spreads distance by reading and technique as Karlsen & Nilsson measured of 43 such (2008, abstract read)', () => {
    const { player } = playerOfHandicap(2.8);
    // 40 varied putts of 2.2 to 19.3 m: ours, slopes up to 2% from all round, green speed 10 ft; share of the distance, root mean square.
    const spreadOf = (who: Player): number => {
      let sum = 0;
      let putts = 0;
      for (const length of [2.2, 6, 10, 19.3])
        for (const slope of [0.005, 0.015, 0.02])
          for (const degrees of [0, 60, 120, 180]) {
            const bearing = (degrees * Math.PI) / 180;
            const putt = {
              surface: planeSurface({ slope, downhill: 0 }),
              greenSpeed: feetToMetres(10),
              ball: { x: length * Math.cos(bearing), y: length * Math.sin(bearing) },
              hole: { x: 0, y: 0 },
              capture: 'rim' as const,
            };
            const strokes = new Strokes(putt, who).at(0.3);
            if (strokes === undefined) continue;
            sum += (strokes.energySd / strokes.energy) ** 2;
            putts++;
          }
      return Math.sqrt(sum / putts);
    };
    // 10.6% in all, of its variance 60% reading, 34% technique: 8.2% and 6.2%. Where their putts lay is not told: a point.
    expect(Math.abs(spreadOf({ ...player, paceSd: 0 }) - 0.082)).toBeLessThan(0.01);
    expect(Math.abs(player.paceSd - 0.062)).toBeLessThan(0.005);
    expect(Math.abs(spreadOf(player) - 0.106)).toBeLessThan(0.01);
  });
});

describe('the other fitted presets', () => {
  it('averaging 90 and scratch hole within 5 points of their few rows, as MODEL.md admits', () => {
    for (const record of ['averaging90', 'scratch'] as const)
      for (const { figure, ours } of rowsOf(record, 'holed'))
        expect(Math.abs(ours - figure.value), `${record} ${figure.feet} ft`).toBeLessThan(0.05);
  });
});

describe('a family', () => {
  it('counts each of it, and the preset, as golfers differ in the slope error that directions give the preset', () => {
    for (const preset of PRESETS) {
      const { player: middle, family } = preset;
      const members = familyOf(preset);
      // Broadie 2019: uphill is holed more. Who has a third of the slope error holes 6 points more downhill (MODEL.md, section 3): nobody.
      expect(members.map(({ player }) => player)).toEqual([
        ...family.slice(1).filter(({ slopeSd }) => slopeSd < middle.slopeSd),
        middle,
        ...family.filter(({ slopeSd }) => slopeSd > middle.slopeSd),
      ]);
      expect(members.length).toBeGreaterThanOrEqual(5);
      expect(members.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
      // Of two on one side of the preset's the nearer counts more.
      for (let i = 1; i < members.length; i++) {
        const [one, other] = [members[i - 1], members[i]];
        if (one.player.slopeSd < middle.slopeSd) expect(other.weight).toBeGreaterThan(one.weight);
        else expect(other.weight).toBeLessThan(one.weight);
      }
    }
  });

  // Each takes seconds: of every day the one who reads worst, farthest from what the search began with.
  it.each(sized([4], [0, 2, 4]))('of the tour holes alike by distance: member %i', (i) => {
    const member = FITTED_FAMILIES.tour[i];
    const rows = compareWithRecord('tour', member, { which: 'distance' });
    // "About equally well": twice the preset's misfit by distance, or a mean square of one, which is a typical difference of one point.
    const own = misfitOf(compareWithRecord('tour', FITTED_PLAYERS.tour, { which: 'distance' }));
    expect(misfitOf(rows)).toBeLessThan(Math.max(1, 2 * own));
  });

  it('goes from mostly stroke to mostly reading, the preset between, five members at least', () => {
    for (const { player, family } of PRESETS) {
      expect(family.length).toBeGreaterThanOrEqual(5);
      for (let i = 1; i < family.length; i++) {
        expect(family[i].slopeSd).toBeGreaterThan(family[i - 1].slopeSd);
        expect(family[i].lineSd).toBeLessThan(family[i - 1].lineSd);
      }
      expect(player.slopeSd).toBeGreaterThan(family[0].slopeSd);
      expect(player.slopeSd).toBeLessThan(family[family.length - 1].slopeSd);
    }
  });
});

describe('preset ids', () => {
  it('belong to one preset each', () => {
    expect(new Set(PRESETS.map(({ id }) => id)).size).toBe(PRESETS.length);
  });

  it('of earlier versions still lead to one, and an unknown one does not', () => {
    for (const id of ['tour-like', 'tour-like-line-only', 'low-handicap'])
      expect(PRESETS).toContain(presetOf(id));
    expect(presetOf('champion')).toBeUndefined();
  });
});
