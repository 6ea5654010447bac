/** A stand-in that answers what it was not made for teaches nothing: unknown members throw. */

/** What test runners and promises ask of any object. */
const harmless: ReadonlySet<string> = new Set(['then', 'toJSON', 'asymmetricMatch', 'nodeType', '$$typeof']);

/** The object with every member that it does not have made an error. */
export function strict<T extends object>(name: string, object: T): T {
  return new Proxy(object, {
    get(target, member) {
      if (!(member in target)) {
        if (typeof member === 'symbol' || harmless.has(member)) return undefined;
        throw new Error(`the stand-in for Electron has no ${name}.${member}`);
      }
      const value: unknown = Reflect.get(target, member);
      return typeof value === 'function' ? value.bind(target) : value;
    },
    set(_target, member) {
      throw new Error(`${name}.${String(member)} cannot be set`);
    },
  });
}
