// Draws the pictures of a page, so that no tap waits for them.
import { Players } from './players'
import type { Told } from './told'

const players = new Players((drawn) => self.postMessage(drawn))
self.onmessage = ({ data }: MessageEvent<Told>) => players.tell(data)
