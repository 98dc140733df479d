/** Those who share the work of a group, in the order of the seats at the first quiz of a week. */
const ROLES = ['role-reader', 'role-writer', 'role-checker', 'role-drummer'] as const;

/** A label that names a role. */
type RoleLabel = (typeof ROLES)[number];

/**
 * The role of each seat, seat 1 first. From quiz to quiz of a week every role moves on by one seat, so that no learner
 * writes every time.
 * @param quizOfWeek 1-based among all quizzes of the week.
 */
export function listRoles(quizOfWeek: number): RoleLabel[] {
  const from = (quizOfWeek - 1) % ROLES.length;
  return [...ROLES.slice(from), ...ROLES.slice(0, from)];
}
