export { default as glossary } from '../../generated/es/glossary.json'
export { default as lessonList } from '../../generated/es/lessons.json'
export { default as ruleList } from '../../generated/es/rules.json'
export { default as sourceTexts } from '../../generated/es/sources.json'
