// How a name or a phrase is fitted into a sentence.

/** Names that keep their capital wherever they stand: the sides, in every language of the app. */
const proper = /^(?:Alpha|Alfa|Bravo|Charlie|Delta)(?!\p{L})/u

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** The same within a sentence: only the first letter falls, and not that of a side's name. */
export const lowerFirst = (text: string): string => (proper.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1))
