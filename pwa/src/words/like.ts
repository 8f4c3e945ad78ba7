/** The shape of a catalogue, whatever its language: the same keys, the same slots. */
export type Like<T> = T extends string
  ? string
  : T extends (...slots: infer Slots) => infer Said
    ? (...slots: Slots) => Said extends string ? string : Said
    : { readonly [Key in keyof T]: Like<T[Key]> }
