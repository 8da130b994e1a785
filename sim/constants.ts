/**
 * Fixed numbers of the model. Each says purpose, unit, source and what a wrong value would break. Tolerances are not
 * here: each lives beside its only use.
 */

/** Acceleration of gravity, m/s^2. Scales break and speed together; 9.81 is the value of MODEL.md's test vectors. */
export const GRAVITY = 9.81;

/** Share of gravity's pull along the slope that a rolling solid sphere feels (1 would be a sliding block). Derived: 1/(1 + 2/5). */
export const ROLLING_FACTOR = 5 / 7;

/** Rolling speed at the foot of the Stimpmeter, m/s (6.00 ft/s). Ties green speed to friction: a_f = v^2 / (2 S). */
export const STIMP_SPEED = 1.83;

/** Sliding friction of a ball on a green, share of its weight (memory). Sets how long a struck ball skids; half of it skids twice as far. */
export const SLIDING_FRICTION = 0.4;

/** Hole radius, m: 4.25 in across (Rules of Golf, definition of "hole"). */
export const HOLE_RADIUS = 0.053975;

/** Ball radius, m: at least 1.680 in across (Equipment Rules); the value used by MODEL.md. */
export const BALL_RADIUS = 0.021335;

/** Fastest speed that drops dead centre by the simple rule, m/s (Holmes 1991, Penner 2002; from memory). */
export const SIMPLE_CENTRE_SPEED = 1.63;

/** Default "die it in" pace, m past the hole (6 in). */
export const DIE_PACE = 0.1524;

/** Default "firm" pace, m past the hole (30 in). */
export const FIRM_PACE = 0.762;

/** The one sensible pace from which better ones are sought for later putts, m past the hole: 15 in, the middle of 12-18 in (common practice, no source). */
export const NEXT_PUTT_PACE = 0.381;

/** Rolls longer than this never happen on a green; guards loops and slopes that barely hold a ball, s. */
export const LONGEST_ROLL = 120;
