/**
 * From a checked request to the engine and back to the response, field by field. Answers for: units at the door (degrees,
 * feet) and the response's names, which are a promise to other programs. Leaves out: checking (request.ts), words
 * (tables.ts).
 */
import {
  type Comparison,
  checkPutt,
  comparePaces,
  degreesToRadians,
  feetToMetres,
  fieldSurface,
  type NextPutts,
  type NoLine,
  type Odds,
  type PaceRow,
  type Player,
  type Point,
  type Putt,
  planeSurface,
  puttOdds,
  type Read,
  type Roll,
  radiansToDegrees,
  readPutt,
  rollBall,
} from '../../sim/index.ts';
import type { PlayerRequest, PuttRequest, RequestOf } from './request.ts';
import { tableWithin } from './workLimit.ts';

export const toPutt = (request: PuttRequest): Putt => {
  const { surface } = request;
  return {
    surface:
      surface.kind === 'plane'
        ? planeSurface({ slope: surface.slope, downhill: degreesToRadians(surface.downhillDeg) })
        : fieldSurface({
            origin: { x: surface.originM[0], y: surface.originM[1] },
            spacing: surface.spacingM,
            columns: surface.columns,
            rows: surface.rows,
            heights: Float64Array.from(surface.heightsM),
          }),
    greenSpeed: feetToMetres(request.greenSpeedFt),
    ball: { x: request.ballM[0], y: request.ballM[1] },
    hole: { x: request.holeM[0], y: request.holeM[1] },
    capture: request.capture,
    skid: request.skid,
  };
};

export const toPlayer = (player: PlayerRequest): Player => ({
  lineSd: degreesToRadians(player.lineSdDeg),
  paceSd: player.paceSd,
  paceBias: player.paceBias,
  slopeSd: player.slopeSd,
  speedSd: player.speedSd,
  readBias: player.readBias,
});

export const askRoll = (request: RequestOf<'roll'>): Roll =>
  rollBall(toPutt(request), degreesToRadians(request.startDeg), request.speed);

/**
 * Where there is no line, a plain cause comes before the solver's: a slope at the hole that holds no ball. It is no bad
 * input: on a grid a ball may run over such a hole and rest beyond it.
 */
const explained = <Found extends { readonly status: string }>(
  putt: Putt,
  found: Found | NoLine,
): Found | NoLine => {
  const cause = found.status === 'noLine' ? checkPutt(putt) : undefined;
  return cause === undefined ? found : { status: 'noLine', reason: cause };
};

export const askRead = (request: RequestOf<'read'>): Read => {
  const putt = toPutt(request);
  return explained(putt, readPutt(putt, request.paceM));
};

export const askOdds = (request: RequestOf<'odds'>): Odds | NoLine => {
  const putt = toPutt(request);
  const player = toPlayer(request.player);
  return explained(putt, puttOdds(putt, request.paceM, player, tableWithin(putt, player)));
};

/** Rows come back in the order the paces were asked for; the engine is given them ascending, each once. */
export const askCompare = (request: RequestOf<'compare'>, nextPutts?: NextPutts): Comparison => {
  const putt = toPutt(request);
  const player = toPlayer(request.player);
  const paces = [...new Set(request.pacesM)].sort((first, second) => first - second);
  const { rows, best } = comparePaces(putt, paces, player, nextPutts ?? tableWithin(putt, player));
  const told = rows.map((row) => ({ ...row, read: explained(putt, row.read) }));
  return { rows: request.pacesM.map((pace) => told[paces.indexOf(pace)]), best };
};

const pair = ({ x, y }: Point): [number, number] => [x, y];

const rollResponse = (roll: Roll) => {
  const pathM: [number, number][] = [];
  for (let index = 0; index < roll.path.length; index += 3)
    pathM.push([roll.path[index], roll.path[index + 1]]);
  const { status, rest, lippedOut, time } = roll;
  return { status, restM: rest ? pair(rest) : null, timeS: time, pathM, lippedOut };
};

const readResponse = (read: PaceRow['read']) =>
  read.status === 'noLine'
    ? { status: read.status, reason: read.reason }
    : {
        status: read.status,
        startDeg: radiansToDegrees(read.start),
        speed: read.speed,
        aimOffsetM: read.aimOffset ?? null,
        curveHeightM: read.curveHeight,
        apexM: pair(read.apex),
        arrivalSpeed: read.arrivalSpeed,
        timeS: read.time,
      };

const oddsResponse = (odds: Odds | NoLine) =>
  odds.status === 'noLine'
    ? { status: odds.status, reason: odds.reason }
    : {
        status: odds.status,
        holed: odds.holed,
        short: odds.short,
        high: odds.high,
        low: odds.low,
        lippedOut: odds.lippedOut,
        threePutt: odds.threePutt,
        expectedPutts: odds.expectedPutts,
        leaveMedianM: odds.leaveMedian,
      };

const compareResponse = ({ rows, best }: Comparison) => ({
  paces: rows.map(({ pace, read, odds }) => ({
    paceM: pace,
    ...readResponse(read),
    ...(odds && read.status === 'ok' ? oddsResponse(odds) : {}),
  })),
  best: { fewestPutts: best?.fewestPutts ?? null, mostHoled: best?.mostHoled ?? null },
});

/** The response to a checked request, ready for JSON. */
export const responses = {
  roll: (request: RequestOf<'roll'>) => rollResponse(askRoll(request)),
  read: (request: RequestOf<'read'>) => readResponse(askRead(request)),
  odds: (request: RequestOf<'odds'>) => oddsResponse(askOdds(request)),
  compare: (request: RequestOf<'compare'>) => compareResponse(askCompare(request)),
} as const;
