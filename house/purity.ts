import ts from 'typescript';

/** Exact conversion factors: they stand in one file only. */
export const FACTORS = [25.4, 0.45359237, 9.80665, 3600];

const FORBIDDEN: Readonly<Record<string, string>> = {
  'Math.pow': 'differs between Node versions in the last bit: write exp(m * log(x))',
  'Math.random': 'is not repeatable: use a seeded generator',
  'Date.now': 'reads the clock: the day is an argument',
};

function isWholeNumber(e: ts.Expression): boolean {
  if (ts.isParenthesizedExpression(e)) return isWholeNumber(e.expression);
  if (ts.isPrefixUnaryExpression(e) && e.operator === ts.SyntaxKind.MinusToken) return isWholeNumber(e.operand);
  return ts.isNumericLiteral(e) && Number.isInteger(Number(e.text));
}

const POWERS: readonly ts.SyntaxKind[] = [
  ts.SyntaxKind.AsteriskAsteriskToken,
  ts.SyntaxKind.AsteriskAsteriskEqualsToken,
];

/** What in this source breaks the rules of the engine, one line each; empty if nothing does. */
export function impurities(name: string, source: string, rules: { pure: boolean; factors: boolean }): string[] {
  const file = ts.createSourceFile(name, source, ts.ScriptTarget.ESNext, true);
  const found: string[] = [];
  const say = (node: ts.Node, what: string) => {
    const { line } = file.getLineAndCharacterOfPosition(node.getStart());
    found.push(`${name}:${line + 1} ${what}`);
  };
  const look = (node: ts.Node): void => {
    if (rules.pure) {
      if (ts.isPropertyAccessExpression(node) || ts.isElementAccessExpression(node)) {
        const member = ts.isPropertyAccessExpression(node)
          ? node.name.text
          : node.argumentExpression.getText().slice(1, -1);
        const called = `${node.expression.getText()}.${member}`;
        if (FORBIDDEN[called]) say(node, `${called} ${FORBIDDEN[called]}`);
      }
      if (ts.isBindingElement(node) && node.parent.parent.kind === ts.SyntaxKind.VariableDeclaration) {
        const from = (node.parent.parent as ts.VariableDeclaration).initializer?.getText();
        const called = `${from}.${(node.propertyName ?? node.name).getText()}`;
        if (FORBIDDEN[called]) say(node, `${called} ${FORBIDDEN[called]}`);
      }
      if (ts.isBinaryExpression(node) && POWERS.includes(node.operatorToken.kind) && !isWholeNumber(node.right))
        say(node, '** with an exponent that is no whole number: write exp(m * log(x))');
    }
    if (rules.factors && ts.isNumericLiteral(node) && FACTORS.includes(Number(node.text)))
      say(node, `${node.text} is a conversion factor: take it from engine/foundation/convert.ts`);
    ts.forEachChild(node, look);
  };
  look(file);
  return found;
}
