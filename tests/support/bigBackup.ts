/** A backup of so many putts, made without the program: nine holes of two putts a round. */

export const bigBackup = (putts: number): string => {
  const rounds = Array.from({ length: Math.ceil(putts / 18) }, (_unused, number) => ({
    id: `big-round-${number}`,
    day: '2025-11-22',
    startedAt: 1763800000000 + number,
    endedAt: 1763813000000,
    holes: 9,
    course: 'Nonesuch Heath',
    withoutPutt: [],
  }));
  const all = rounds.flatMap((round, number) =>
    Array.from({ length: 18 }, (_unused, index) => {
      const first = index % 2 === 0;
      return {
        id: `big-putt-${number}-${index}`,
        roundId: round.id,
        hole: 1 + Math.floor(index / 2),
        stroke: first ? 1 : 2,
        kind: 'putt',
        distance: first ? 6.096 : 0.9144,
        climb: 'up',
        breaks: 'leftToRight',
        holed: !first,
        ...(first && { miss: { side: 'low', reach: 'past', leave: 0.9144 } }),
        recordedAt: 1763800000000 + 60_000 * index,
      };
    }),
  );
  return JSON.stringify({
    format: 'borrow-backup',
    version: 2,
    madeAt: 1764000000000,
    tables: { rounds, putts: all.slice(0, putts), practice: [], readSets: [] },
  });
};
