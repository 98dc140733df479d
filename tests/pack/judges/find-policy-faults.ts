import { CspEvaluator } from 'csp_evaluator';
import { Severity } from 'csp_evaluator/dist/finding.js';
import { CspParser } from 'csp_evaluator/dist/parser.js';

const META = /<meta http-equiv="Content-Security-Policy" content="([^"]*)">/g;

/**
 * What csp_evaluator finds in the content policy of a page: severity and words. It judges what a script could get past;
 * that the policy comes first, and once, is looked at here, since a policy binds only what comes after it.
 */
export function findPolicyFaults(html: string): string[] {
  const policies = [...html.matchAll(META)].map(([, policy = '']) => policy.replaceAll(/&#(?:39|x27);/g, "'"));
  const [policy] = policies;
  if (policy === undefined || policies.length > 1) return [`the page has ${policies.length} policies`];
  const isFirst = /<head>\s*<meta http-equiv="Content-Security-Policy"/.test(html);
  const findings = new CspEvaluator(new CspParser(policy).csp).evaluate();
  return [
    ...(isFirst ? [] : ['something stands before the policy']),
    ...findings.map(({ severity, directive, value, description }) =>
      [Severity[severity], directive, value ?? '', description].join(' '),
    ),
  ];
}
