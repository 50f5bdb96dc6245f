// The door of the layer: what other layers may use, listed one by one.

export {};
