export * from './frame'
