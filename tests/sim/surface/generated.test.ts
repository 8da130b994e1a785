/** Greens from a seed: believable, the same everywhere, with room for a hole. */
import { describe, expect, it } from 'vitest';
import {
  type FieldSurface,
  generateGreen,
  type HeightSample,
  pinSpots,
  planeSurface,
  sampleSurface,
} from '../../../sim/index.ts';

const SEEDS = Array.from({ length: 50 }, (_, seed) => seed);

/** Slopes (rise over run) every 0.2 m, between the nodes as well as on them. */
function slopesOf(surface: FieldSurface): Float64Array {
  const size = (surface.columns - 1) * surface.spacing;
  const count = Math.floor(size / 0.2) + 1;
  const slopes = new Float64Array(count * count);
  const sample: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
  for (let j = 0; j < count; j++)
    for (let i = 0; i < count; i++) {
      if (!sampleSurface(surface, Math.min(size, i * 0.2), Math.min(size, j * 0.2), sample))
        throw new Error(`off the green at ${i}, ${j}`);
      slopes[j * count + i] = Math.hypot(sample.gradientX, sample.gradientY);
    }
  return slopes;
}

const shareBetween = (slopes: Float64Array, low: number, high: number): number =>
  slopes.filter((slope) => slope >= low && slope <= high).length / slopes.length;

describe('a generated green', () => {
  it('slopes 1 to 3% over most of every one of fifty greens and nowhere 7%', () => {
    // A believable green: most of it 1-3% and nothing unbelievable; "most" = more than half.
    for (const seed of SEEDS) {
      const slopes = slopesOf(generateGreen({ seed }));
      expect(shareBetween(slopes, 0.01, 0.03)).toBeGreaterThan(0.5);
      expect(Math.max(...slopes)).toBeLessThan(0.07);
    }
  });

  it('with a tier still slopes 1 to 3% over half of itself on average, has a steeper band, and nowhere 7%', () => {
    let sum = 0;
    for (const seed of SEEDS) {
      const slopes = slopesOf(generateGreen({ seed, tier: true }));
      sum += shareBetween(slopes, 0.01, 0.03);
      expect(Math.max(...slopes)).toBeLessThan(0.07);
      expect(shareBetween(slopes, 0.035, 0.07)).toBeGreaterThan(0.02);
    }
    expect(sum / SEEDS.length).toBeGreaterThan(0.5);
  });

  it('is the same for the same seed and another for another', () => {
    expect(generateGreen({ seed: 'a' })).toEqual(generateGreen({ seed: 'a' }));
    expect(generateGreen({ seed: 4 })).toEqual(generateGreen({ seed: '4' }));
    expect(generateGreen({ seed: 4 }).heights).not.toEqual(generateGreen({ seed: 5 }).heights);
  });

  it('keeps its heights from version to version and machine to machine', () => {
    // Written down once (2026-11-25) from this generator: a guard against change, not a reference value.
    const { heights, columns, rows, spacing, origin } = generateGreen({ seed: 1 });
    expect({ columns, rows, spacing, origin }).toEqual({
      columns: 81,
      rows: 81,
      spacing: 0.25,
      origin: { x: 0, y: 0 },
    });
    expect([heights[0], heights[3280], heights[6560]]).toEqual([0.0053779, -0.005964, 0.0228495]);
  });

  it('falls the way and about as much as asked', () => {
    // Over fifty reliefs the mean gradient is the tilt; each relief adds at most about 1% of its own, so the mean of
    // fifty is within 1% / sqrt(50), three times over: 0.4%.
    let sumX = 0;
    let sumY = 0;
    const size = 20;
    for (const seed of SEEDS) {
      const { heights, columns } = generateGreen({ seed, tilt: 0.02, downhill: 0 });
      for (let i = 0; i < columns; i++) {
        sumX += (heights[i * columns + columns - 1] - heights[i * columns]) / size / columns;
        sumY += (heights[(columns - 1) * columns + i] - heights[i]) / size / columns;
      }
    }
    expect(Math.abs(sumX / SEEDS.length + 0.02)).toBeLessThan(0.004);
    expect(Math.abs(sumY / SEEDS.length)).toBeLessThan(0.004);
  });

  it('spans the size asked for', () => {
    const { columns, rows, spacing } = generateGreen({ seed: 1, sizeM: 12.3 });
    expect((columns - 1) * spacing).toBeCloseTo(12.3, 12);
    expect(rows).toBe(columns);
  });

  it('refuses sizes, tilts and directions it cannot use', () => {
    expect(() => generateGreen({ seed: 1, sizeM: 2 })).toThrow(/Got a green 2 m wide, expected 6 to 60 m/);
    expect(() => generateGreen({ seed: 1, tilt: 2 })).toThrow(/write 2% as 0.02/);
    expect(() => generateGreen({ seed: 1, downhill: Number.NaN })).toThrow(/expected a finite angle/);
  });
});

describe('places for a hole', () => {
  it('are found on every green, away from the edge, with under 3% all round', () => {
    const sample: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
    for (const seed of SEEDS)
      for (const tier of [false, true]) {
        const surface = generateGreen({ seed, tier });
        const spots = pinSpots(surface, 4, seed);
        expect(spots).toHaveLength(4);
        for (const { x, y } of spots) {
          expect(Math.min(x, y, 20 - x, 20 - y)).toBeGreaterThanOrEqual(3);
          for (let turn = 0; turn < 16; turn++)
            for (const radius of [0, 0.5, 1]) {
              const angle = (turn * Math.PI) / 8;
              sampleSurface(surface, x + radius * Math.cos(angle), y + radius * Math.sin(angle), sample);
              expect(Math.hypot(sample.gradientX, sample.gradientY)).toBeLessThan(0.03);
            }
        }
      }
  });

  it('repeat with the seed, stand apart, and are none where there is no green to cut', () => {
    const surface = generateGreen({ seed: 9 });
    const spots = pinSpots(surface, 5, 'sunday');
    expect(spots).toEqual(pinSpots(surface, 5, 'sunday'));
    for (const [i, a] of spots.entries())
      for (const b of spots.slice(i + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(0.5);
    expect(pinSpots(planeSurface({ slope: 0.02, downhill: 0 }), 3, 1)).toEqual([]);
    expect(pinSpots(generateGreen({ seed: 9, tilt: 0.05 }), 3, 1)).toEqual([]);
  });
});
