// A seed whose scene would be unfair has none; so often is another tried before
// giving up: chosen by us.
const mostTried = 6

/** Makes the first scene that can be: the one wanted, else another in its stead, until there is none to try. */
export async function firstFair<Scene, Made>(
  wanted: Scene,
  make: (scene: Scene) => Promise<Made>,
  another: (unfair: Scene, turn: number) => Promise<Scene | undefined> | Scene,
): Promise<Made> {
  let scene = wanted
  for (let turn = 1; ; turn++) {
    try {
      return await make(scene)
    } catch (error) {
      const next = turn < mostTried && (await another(scene, turn))
      if (!next) throw error
      scene = next
    }
  }
}
