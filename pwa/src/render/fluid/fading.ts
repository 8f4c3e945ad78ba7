/** What air and smoke lose on their way, each as a rate in 1/s. */
export interface Fading {
  /** Still air brakes a free eddy. */
  drag: number
  /** Clear air beside the smoke comes to rest sooner: in depth it is free to close in behind. */
  still: number
  /** A plume leans less than a plane stream does: what pushes it aside passes round it in depth. */
  sideways: number
  /** Mixing with fresh air thins smoke; a plume widens in depth too, which this plane does not show. */
  thin: number
  /** Mixing cools. */
  cool: number
  /** Droplets evaporate. */
  dry: number
  /** Burning gas burns out, also where it hardly moves. */
  burn: number
}
