/**
 * What holds the gimbal: its stops, which are dead or give some of the speed back, and its dry friction, which holds it
 * until the moment on it is larger. At rest against a stop or held by friction the gimbal has no say in the motion, and
 * the rotor gives the vehicle nothing.
 */
import { TILT, TILT_RATE } from './vehicle-equations.ts';

export interface GimbalFigures {
  readonly gimbalInertia: number;
  /** α_m, rad. */
  readonly gimbalTravel: number;
  /** F, N·m. */
  readonly gimbalDryFriction: number;
  readonly gimbalRestitution: number;
}

/** What the gimbal's contact is now. Only the functions below change it. */
export interface GimbalContact {
  readonly gimbal: GimbalFigures;
  readonly absent: boolean;
  held: boolean;
  /** Side to which it moves, where there is dry friction. */
  direction: number;
  /** 1 or −1 while it rests against that stop. */
  atStop: number;
}

const NOTHING = 0;
export const STOP_REACHED = 1;
const TURNED = 2;
const LET_GO = 3;

/** rad/s; a gimbal that bounces no faster stays at the stop. */
const SLOWEST_BOUNCE = 1e-3;

export function gimbalContact(figures: GimbalFigures): GimbalContact {
  const { gimbalInertia, gimbalTravel, gimbalDryFriction, gimbalRestitution } = figures;
  const gimbal = { gimbalInertia, gimbalTravel, gimbalDryFriction, gimbalRestitution };
  const absent = gimbalInertia === 0;
  return { gimbal, absent, held: absent, direction: 0, atStop: 0 };
}

/** Finds out what holds a gimbal in this state; a rate that is held is set to 0. */
export function beginContact(contact: GimbalContact, state: Float64Array, tiltMoment: number): void {
  if (contact.absent) {
    state[TILT_RATE] = 0;
    return;
  }
  const tilt = state[TILT] ?? 0;
  const rate = state[TILT_RATE] ?? 0;
  const side = Math.abs(tilt) >= contact.gimbal.gimbalTravel ? Math.sign(tilt) : 0;
  contact.atStop = side !== 0 && side * rate >= 0 ? side : 0;
  if (rate !== 0 && contact.atStop === 0) move(contact, Math.sign(rate));
  else rest(contact, state, tiltMoment);
}

/**
 * What has happened to the gimbal by this state: a code, 0 for nothing.
 *
 * @param tiltMoment  asked for where the gimbal is held only
 */
export function contactEvent(contact: GimbalContact, state: Float64Array, tiltMoment: number): number {
  if (contact.held) return !contact.absent && unheld(contact, tiltMoment) > 0 ? LET_GO : NOTHING;
  const tilt = state[TILT] ?? 0;
  const rate = state[TILT_RATE] ?? 0;
  if (Math.abs(tilt) > contact.gimbal.gimbalTravel && tilt * rate > 0) return STOP_REACHED;
  return contact.direction * rate < 0 ? TURNED : NOTHING;
}

/** How far past that event a state is; not above 0 before it. */
export function pastContact(
  contact: GimbalContact,
  event: number,
  state: Float64Array,
  tiltMoment: number,
): number {
  if (event === STOP_REACHED) return Math.abs(state[TILT] ?? 0) - contact.gimbal.gimbalTravel;
  if (event === TURNED) return -contact.direction * (state[TILT_RATE] ?? 0);
  return unheld(contact, tiltMoment);
}

/** Makes the event happen, in place. */
export function makeContact(
  contact: GimbalContact,
  event: number,
  state: Float64Array,
  tiltMoment: number,
): void {
  if (event === STOP_REACHED) {
    const side = Math.sign(state[TILT] ?? 0);
    const speed = contact.gimbal.gimbalRestitution * Math.abs(state[TILT_RATE] ?? 0);
    state[TILT] = side * contact.gimbal.gimbalTravel;
    if (speed > SLOWEST_BOUNCE) {
      state[TILT_RATE] = -side * speed;
      move(contact, -side);
    } else {
      contact.atStop = side;
      rest(contact, state, tiltMoment);
    }
  } else if (event === TURNED) rest(contact, state, tiltMoment);
  else move(contact, sideOf(contact, tiltMoment));
}

/** By how much the moment on a gimbal at rest is more than what holds it; not above 0 while it is held. */
function unheld({ gimbal, atStop }: GimbalContact, tiltMoment: number): number {
  const up = atStop === 1 ? Number.NEGATIVE_INFINITY : tiltMoment - gimbal.gimbalDryFriction;
  const down = atStop === -1 ? Number.NEGATIVE_INFINITY : -tiltMoment - gimbal.gimbalDryFriction;
  return Math.max(up, down);
}

/** The side that it goes to when it is let go. */
function sideOf({ atStop }: GimbalContact, tiltMoment: number): number {
  return atStop !== 0 ? -atStop : Math.sign(tiltMoment);
}

function move(contact: GimbalContact, side: number): void {
  contact.held = false;
  contact.atStop = 0;
  contact.direction = contact.gimbal.gimbalDryFriction > 0 ? side : 0;
}

function rest(contact: GimbalContact, state: Float64Array, tiltMoment: number): void {
  state[TILT_RATE] = 0;
  if (unheld(contact, tiltMoment) > 0) {
    move(contact, sideOf(contact, tiltMoment));
    return;
  }
  contact.held = contact.gimbal.gimbalDryFriction > 0 || contact.atStop !== 0;
  contact.direction = 0;
}
