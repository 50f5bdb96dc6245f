/** Those who want to be told of something, by number: a function cannot be named across threads. */
export class Listeners<T> {
  readonly #all = new Map<number, (value: T) => void>();
  #last = 0;

  add(listener: (value: T) => void): number {
    this.#last++;
    this.#all.set(this.#last, listener);
    return this.#last;
  }

  remove(number: number): void {
    this.#all.delete(number);
  }

  tell(value: T): void {
    for (const listener of this.#all.values()) listener(value);
  }

  get size(): number {
    return this.#all.size;
  }
}
