# Exact one-way analysis of the doubles nearest to the values of SmLs07 (NIST StRD), by rational arithmetic.
# Python 3.11: python3 anova-of-doubles.py > ../ano-08/rounded-to-doubles.json, from this folder.
import json
from decimal import Decimal, getcontext
from fractions import Fraction

getcontext().prec = 40
with open('../ano-08/ANO-08-strd-smls07.json') as file:
    groups = [[Fraction(x) for x in group] for group in json.load(file)['data']['groups'].values()]
n = sum(map(len, groups))
grand = sum(map(sum, groups)) / n
means = [sum(g) / len(g) for g in groups]
between = sum(len(g) * (m - grand) ** 2 for g, m in zip(groups, means))
within = sum(sum((x - m) ** 2 for x in g) for g, m in zip(groups, means))
ms_between = between / (len(groups) - 1)
ms_within = within / (n - len(groups))
root = Decimal(ms_within.numerator) / Decimal(ms_within.denominator)
print(json.dumps({
    'source': 'tests/reference/scripts/anova-of-doubles.py, exact rational arithmetic on the doubles',
    'expected': {
        'SS between': float(between), 'MS between': float(ms_between), 'F': float(ms_between / ms_within),
        'SS within': float(within), 'MS within': float(ms_within),
        'R-squared': float(between / (between + within)), 'residual SD': float(root.sqrt()),
    },
}, indent=2))
