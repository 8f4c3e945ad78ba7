export { default as glossary } from '../../generated/glossary.json'
export { default as lessonList } from '../../generated/lessons.json'
export { default as ruleList } from '../../generated/rules.json'
export const sourceTexts = {} // as they stand in generated/sources.json
