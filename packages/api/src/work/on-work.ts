/** Work told: jobs in words, the day, the orders, calendars. */
export { jobVerbs } from '../words/jobs/en-gb.ts';
export { jobAmount, jobHours, jobHow, jobTitle } from './job-words.ts';
export { jobsFor, tellDay, tellOrders, tellWork } from './tell-work.ts';
