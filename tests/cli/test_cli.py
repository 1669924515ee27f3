#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The program from the outside, without a display: exit statuses, messages, JSON, survey, tables, pictures.
Use: test_cli.py PROGRAM [unittest arguments]"""
import ast
import glob
import json
import math
import operator
import os
import re
import subprocess
import sys
import tempfile
import unittest

import small

PROGRAM = os.path.abspath(sys.argv[1])
TOP = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..')
STATUSES = {'supported', 'with_conditions', 'not_supported', 'undecided'}


def run(*arguments, stdin=None, env=None, **more):
    """The program without display and with the messages' own language."""
    clean = {k: v for k, v in os.environ.items() if k not in ('DISPLAY', 'WAYLAND_DISPLAY', 'LANGUAGE')}
    clean['LC_ALL'] = 'C.UTF-8'
    clean.update(env or {})
    if isinstance(stdin, str):
        stdin = stdin.encode()
    return subprocess.run([PROGRAM, *arguments], input=stdin, capture_output=True, env=clean, timeout=300, **more)


class Case(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory(prefix='handspike-cli-')
        self.addCleanup(self.folder.cleanup)

    def path(self, name):
        return os.path.join(self.folder.name, name)

    def write(self, document, name='task.handspike.json'):
        with open(self.path(name), 'w', encoding='utf-8') as file:
            file.write(document if isinstance(document, str) else json.dumps(document))
        return self.path(name)

    def fails(self, status, *arguments, **more):
        done = run(*arguments, **more)
        self.assertEqual(done.returncode, status, done.stderr.decode())
        self.assertEqual(done.stdout, b'')
        self.assertTrue(done.stderr.strip())
        return done.stderr.decode()

    def results(self, document, *more):
        done = run('assess', self.write(document), '--json', *more)
        self.assertEqual(done.returncode, 0, done.stderr.decode())
        self.assertEqual(done.stderr, b'')
        return json.loads(done.stdout, parse_constant=lambda word: self.fail(word))


class Use(Case):
    def test_help_and_version(self):
        done = run('--help')
        self.assertEqual(done.returncode, 0)
        for word in (b'assess', b'check', b'survey', b'convert'):
            self.assertIn(word, done.stdout)
        self.assertRegex(run('--version').stdout.decode(), r'^handspike \d+\.\d+\.\d+\n$')
        self.assertEqual(run('assess', '--help').returncode, 0)

    def test_wrong_use_is_2(self):
        self.fails(2, 'asses')
        self.fails(2, '--nonsense')
        self.fails(2, 'assess')
        self.fails(2, 'assess', 'a', 'b')
        self.fails(2, 'assess', '--nonsense', 'a')
        self.fails(2, 'survey', '--jobs', '0', stdin='')
        self.fails(2, 'survey', '--jobs', 'many', stdin='')
        self.fails(2, 'survey', 'file.jsonl', stdin='')

    def test_no_such_file_is_4(self):
        for command in ('assess', 'check', 'convert'):
            self.assertIn('nowhere', self.fails(4, command, self.path('nowhere.json')))
        self.fails(4, self.path('nowhere.handspike.json'))
        self.fails(4, 'check', self.folder.name)

    def test_full_disk_is_4(self):
        with open('/dev/full', 'wb') as full:
            done = subprocess.run([PROGRAM, 'assess', self.write(small.crew())], stdout=full, stderr=subprocess.PIPE, timeout=120)
        self.assertEqual(done.returncode, 4)
        self.assertTrue(done.stderr)


class Invalid(Case):
    def lines(self, document):
        file = self.write(document)
        said = self.fails(3, 'check', file).strip().split('\n')
        self.assertEqual(said, self.fails(3, 'assess', '--json', file).strip().split('\n'))
        for line in said:
            self.assertTrue(line.startswith(file + ': '), line)
        return [line[len(file) + 2:] for line in said]

    def test_each_error_is_a_line_with_its_path(self):
        document = small.crew()
        document['load']['parts'][0]['mass_kg'] = -1
        document['options'][0]['bearers'][1]['worker'] = 'nobody'
        document['route']['points'][1]['move'] = 'throw'
        said = self.lines(document)
        for path in ('load.parts[0].mass_kg', 'options[0].bearers[1].worker', 'route.points[1].move'):
            self.assertEqual(sum(line.startswith(path + ': ') for line in said), 1, said)

    def test_no_json(self):
        for text in ('', '{', '[]', '{"format":"handspike-assessment","version":1,"version":1}', 'null'):
            self.assertGreaterEqual(len(self.lines(text)), 1)

    def test_a_newer_version_is_not_assessed(self):
        document = small.crew()
        document['version'] = 2
        self.assertTrue(self.lines(document)[0].startswith('version: '))

    def test_an_unknown_key_is_a_warning(self):
        document = small.crew()
        document['load']['colour'] = 'blue'
        done = run('check', self.write(document))
        self.assertEqual(done.returncode, 0)
        self.assertIn(b'load.colour', done.stderr)


class Assess(Case):
    def test_file_and_standard_input_give_the_same(self):
        text = json.dumps(small.suited())
        a = run('assess', self.write(text), '--json')
        b = run('assess', '-', '--json', stdin=text)
        self.assertEqual(a.returncode, 0, a.stderr.decode())
        self.assertEqual(a.stdout, b.stdout)
        self.assertEqual(a.stdout, run('assess', '--json', self.write(text)).stdout)

    def test_results_have_what_the_file_format_says(self):
        results = self.results(small.suited())
        self.assertEqual((results['format'], results['version']), ('handspike-results', 1))
        self.assertEqual([o['id'] for o in results['options']], ['crew', 'suited', 'unaided'])
        self.assertEqual(results['comparison']['baseline'], 'crew')
        self.assertNotIn('doubt', results)
        self.assertAlmostEqual(results['load']['mass_kg'], 24)
        for option in results['options']:
            self.assertIn(option['verdict']['status'], STATUSES)
            self.assertTrue(option['samples'])
            for finding in option['findings']:
                self.assertIn(finding['status'], ('within', 'near', 'beyond', 'not_judged'))
                self.assertTrue(finding['text'], finding)
            for sample in option['samples']:
                held = sum(g['up_N'] for g in sample['grips'])
                wanted = 24 * (9.80665 + sample['load']['acceleration_m_s2'][1])
                self.assertAlmostEqual(held, wanted, delta=1e-6 * wanted)
        digest = run('check', self.path('task.handspike.json')).stdout.decode()
        self.assertIn(results['document']['digest'], digest)
        self.assertRegex(results['document']['digest'], r'^[0-9a-f]{64}$')

    def test_doubt_only_when_asked(self):
        document = small.suited()
        document['doubt'] = {'draws': 64, 'seed': 1}
        results = self.results(document, '--doubt')
        self.assertEqual({o['id'] for o in results['doubt']['options']} - {'unaided'}, {'crew', 'suited'})
        for option in results['doubt']['options']:
            for check in option['checks']:
                self.assertTrue(0 <= check['p_within'] <= 1)

    def test_a_site_brings_its_own_limits(self):
        own = os.path.join(TOP, 'data', 'limits', 'site-example.json')
        task = self.write(small.crew())

        def compression(*more):
            ran = run('assess', task, '--json', *more)
            self.assertEqual(ran.returncode, 0, ran.stderr)
            return next(f for f in json.loads(ran.stdout)['options'][0]['findings'] if f['check'] == 'spine.compression')

        self.assertEqual(compression()['limit'], 3400)
        self.assertEqual(compression('--limits', own)['limit'], 3000)
        text = run('assess', task, '--limits', own).stdout.decode()
        for part in ('Limits of the site', 'edition 2026-1', 'unconfirmed', 'Yard rule 4, invented'):
            self.assertIn(part, ' '.join(text.split()))
        self.assertNotIn('Limits of the site', run('assess', task).stdout.decode())

    def test_every_command_that_assesses_takes_a_sites_limits(self):
        own = os.path.join(TOP, 'data', 'limits', 'site-example.json')
        task = self.write(small.crew())
        with open(own, encoding='utf-8') as file:
            title = json.load(file)['title']
        results = self.results(small.crew(), '--limits', own)
        named = results['site_limits']
        self.assertEqual((named['id'], named['name'], named['edition'], len(named['digest'])), ('example-yard', title, '2026-1', 64))
        by_check = {limit['check']: limit for limit in named['limits']}
        self.assertEqual(by_check['spine.compression']['figure'], 3000)
        self.assertEqual([by_check['lift.mil-std-1472'][k] for k in ('confirmed', 'used')], [False, True])
        self.assertNotIn('site_limits', self.results(small.crew()))
        document = small.crew()
        document.setdefault('policy', {})['site_limits'] = {'spine.compression': 2500}
        results = self.results(document, '--limits', own)
        self.assertFalse(next(i for i in results['site_limits']['limits'] if i['check'] == 'spine.compression')['used'])
        self.assertEqual(next(f for f in results['options'][0]['findings'] if f['check'] == 'spine.compression')['limit'], 2500)
        pdf = self.path('own.pdf')
        for command in (['sheet', task, '-o', pdf], ['handout', task, '-o', pdf], ['draw', task, '-o', pdf, '--option', 'crew', '--at', '1']):
            self.assertEqual(run(*command, '--limits', own).returncode, 0, command)
            self.fails(4, *command, '--limits', self.path('none.json'))
        line = json.dumps(small.crew()).encode() + b'\n'
        self.assertEqual(run('survey', '--limits', own, stdin=line).returncode, 0)
        short = json.loads(run('survey', '--limits', own, stdin=line).stdout)
        self.assertEqual(short['site_limits'], {'id': 'example-yard', 'edition': '2026-1', 'digest': named['digest']})
        self.assertNotIn('site_limits', json.loads(run('survey', stdin=line).stdout))

    def test_a_countrys_set_is_taken_by_its_name(self):
        results = self.results(small.crew(), '--limits', 'switzerland')
        self.assertEqual(results['site_limits']['id'], 'switzerland')
        self.assertEqual({limit['known'] for limit in results['site_limits']['limits']}, {'seen'})
        for option in results['options']:
            guide = next(f for f in option['findings'] if f['check'] == 'lift.gb-guideline')
            if guide['status'] == 'not_judged':
                self.assertEqual(guide['why'], 'scope')  # a team, a suit
            else:
                self.assertIn('Switzerland', guide['text'])
        self.fails(4, 'assess', self.path('none.json'), '--limits', 'no-such-place')

    def test_every_team_rule_is_printed_on_request(self):
        task = self.write(small.crew())
        self.assertNotIn('All team rules', run('assess', task).stdout.decode())
        text = run('assess', task, '--team-rules').stdout.decode()
        self.assertIn('All team rules', text)
        for rule in ('British guidance: ', 'MIL-STD-1472: ', 'EN 1005-2: ', 'measured factor: '):
            self.assertIn(rule, text)

    def test_a_wrong_set_of_limits_is_3_with_its_path(self):
        with open(os.path.join(TOP, 'data', 'limits', 'site-example.json'), encoding='utf-8') as file:
            own = json.load(file)
        own['limits']['day.mass']['unit'] = 't'
        ran = self.fails(3, 'assess', self.write(small.crew()), '--limits', self.write(own, 'own.json'))
        self.assertIn('limits["day.mass"].unit: is "t"; allowed: "kg"', ran)
        self.fails(4, 'assess', self.write(small.crew()), '--limits', self.path('none.json'))

    def test_text_fits_a_mail(self):
        done = run('assess', self.write(small.suited()))
        self.assertEqual(done.returncode, 0)
        text = done.stdout.decode()
        self.assertTrue(text.startswith('Box to the bench\n'))
        for word in ('Verdict: ', 'Assumptions', 'Cautions', 'In the hands'):
            self.assertIn(word, text)
        self.assertLessEqual(max(len(line) for line in text.split('\n')), 78)
        self.assertNotRegex(text, r'\bnan\b|\{\d')

    def test_numbers_do_not_follow_the_locale(self):
        file = self.write(small.suited())
        plain = run('assess', file, '--json').stdout
        for locale in ('de_DE.UTF-8', 'de_DE.utf8', 'fr_FR.UTF-8'):
            other = json.loads(run('assess', file, '--json', env={'LC_ALL': locale}).stdout)
            self.assertEqual(other['options'][0]['samples'], json.loads(plain)['options'][0]['samples'])


OPERATORS = {ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul, ast.Div: operator.truediv,
             ast.Pow: operator.pow, ast.USub: operator.neg, ast.UAdd: operator.pos}
FUNCTIONS = {n: getattr(math, n) for n in ('sqrt', 'sin', 'cos', 'tan', 'atan', 'atan2', 'asin', 'acos', 'exp')}
FUNCTIONS.update({'min': min, 'max': max, 'abs': abs, 'ln': math.log})


def evaluate(node):
    if isinstance(node, ast.Expression):
        return evaluate(node.body)
    if isinstance(node, ast.Constant):
        return float(node.value)
    if isinstance(node, ast.Name) and node.id == 'pi':
        return math.pi
    if isinstance(node, ast.BinOp):
        return OPERATORS[type(node.op)](evaluate(node.left), evaluate(node.right))
    if isinstance(node, ast.UnaryOp):
        return OPERATORS[type(node.op)](evaluate(node.operand))
    if isinstance(node, ast.Call):
        return FUNCTIONS[node.func.id](*[evaluate(a) for a in node.args])
    raise ValueError(ast.dump(node))


def half_digit(number):
    mantissa, _, exponent = number.lower().partition('e')
    decimals = len(mantissa.partition('.')[2])
    return 0.5 * 10.0 ** (int(exponent or 0) - decimals)


class Working(Case):
    def redo(self, results, name):
        n = 0
        for option in results['options']:
            for finding in option['findings']:
                lines = [x for x in finding['working'] if x.count(' = ') >= 2 and not x.startswith('Source')]
                for line in lines:
                    first, _, rest = line.partition(' = ')
                    expression, _, printed = rest.rpartition(' = ')
                    number = re.match(r'-?[\d.]+(?:e[-+]?\d+)?', printed).group(0)
                    got = evaluate(ast.parse(expression.replace('^', '**'), mode='eval'))
                    self.assertLessEqual(abs(got - float(number)), half_digit(number) * 1.000001 + 1e-12,
                                         f'{name}, {option["id"]}, {finding["check"]}: {line} gives {got}')
                    n += 1
        return n

    def test_every_printed_working_can_be_done_again(self):
        self.assertGreater(self.redo(self.results(small.suited()), 'small'), 10)

    def test_so_can_those_of_the_examples(self):
        for path in sorted(glob.glob(os.path.join(TOP, 'data', 'examples', '*.handspike.json'))):
            done = run('assess', path, '--json')
            self.assertEqual(done.returncode, 0, done.stderr.decode())
            self.redo(json.loads(done.stdout), os.path.basename(path))


class Survey(Case):
    def test_lines_come_in_order_and_bad_ones_do_not_stop(self):
        lines = [small.line(small.crew(), f'task {i}') for i in range(12)]
        lines[5] = '{"format": 3'
        done = run('survey', '--jobs', '3', stdin='\n'.join(lines) + '\n')
        self.assertEqual(done.returncode, 0, done.stderr.decode())
        out = [json.loads(x) for x in done.stdout.decode().splitlines()]
        self.assertEqual([x['line'] for x in out], list(range(1, 13)))
        for i, x in enumerate(out):
            if i == 5:
                self.assertEqual(set(x), {'line', 'errors'})
                self.assertEqual(set(x['errors'][0]), {'path', 'text'})
            else:
                self.assertEqual(list(x), ['line', 'title', 'digest', 'options'])
                self.assertEqual(x['title'], f'task {i}')
                self.assertIn(x['options'][0]['status'], STATUSES)
                self.assertEqual(set(x['options'][0]['worst']) - {'ratio'}, {'check'})

    def test_any_number_of_jobs_gives_the_same_bytes(self):
        text = '\n'.join(small.line(small.suited() if i % 3 else small.crew(), f'task {i}') for i in range(30)) + '\n'
        outs = {run('survey', '--jobs', n, stdin=text).stdout for n in ('1', '2', '7')}
        self.assertEqual(len(outs), 1)
        self.assertEqual(outs.pop().count(b'\n'), 30)

    def test_a_survey_says_what_assess_says(self):
        text = small.line(small.suited())
        line = json.loads(run('survey', stdin=text).stdout)
        results = self.results(small.suited())
        for short, whole in zip(line['options'], results['options']):
            self.assertEqual((short['id'], short['status']), (whole['id'], whole['verdict']['status']))
            shares = [b['share_N'] for s in whole['samples'] for b in s['bearers']]
            self.assertAlmostEqual(short['share_max_N'], max(shares), places=6)

    def peak_kB(self, n):
        text = (small.line(small.crew()) + '\n') * n
        source = self.write(text, 'many.jsonl')
        # The address sanitizer keeps what was freed for a while: that is not the program's memory.
        kept = {'ASAN_OPTIONS': os.environ.get('ASAN_OPTIONS', '') + ':quarantine_size_mb=0:thread_local_quarantine_size_kb=0'}
        with open(source, 'rb') as stdin, open(os.devnull, 'wb') as nothing:
            process = subprocess.Popen([PROGRAM, 'survey', '--jobs', '2'], stdin=stdin, stdout=nothing, env=os.environ | kept)
            _, status, usage = os.wait4(process.pid, 0)
            process.returncode = os.waitstatus_to_exitcode(status)
        self.assertEqual(process.returncode, 0)
        return usage.ru_maxrss

    def test_memory_does_not_grow_with_the_number_of_lines(self):
        few, many = self.peak_kB(40), self.peak_kB(400)
        # the address sanitizer keeps freed memory back on purpose (256 MiB at most)
        self.assertLess(many, few + (262144 if 'ASAN_OPTIONS' in os.environ else 8192))


TABLE = ('title,mass_kg,length_m,width_m,height_m,hand_height_start_m,hand_height_end_m,distance_m,crew,site.friction\n'
         '"Crate, old",24,0.6,0.4,0.3,0.5,0.9,4,2,0.55\n'
         'Bag,12,0.5,0.3,0.3,0.3,1.1,,1,0.5\n')


class Convert(Case):
    def test_a_table_goes_through_the_survey(self):
        made = run('convert', self.write(TABLE, 'tasks.csv'))
        self.assertEqual(made.returncode, 0, made.stderr.decode())
        self.assertEqual(made.stdout, run('convert', '-', stdin=TABLE).stdout)
        self.assertEqual([json.loads(x)['about']['title'] for x in made.stdout.decode().splitlines()], ['Crate, old', 'Bag'])
        out = [json.loads(x) for x in run('survey', stdin=made.stdout).stdout.decode().splitlines()]
        self.assertEqual([len(x['options']) > 0 for x in out], [True, True])

    def test_a_bad_cell_is_named_and_nothing_is_printed(self):
        said = self.fails(3, 'convert', self.write(TABLE.replace(',24,', ',heavy,'), 'tasks.csv'))
        self.assertIn('tasks.csv: row 2, mass_kg: ', said)


class Paper(Case):
    def setUp(self):
        super().setUp()
        if b'handspike sheet' not in run('--help').stdout:
            self.skipTest('built without pictures')

    def test_pictures(self):
        file = self.write(small.suited())
        starts = {'svg': b'<?xml', 'png': b'\x89PNG', 'pdf': b'%PDF'}
        for ending, start in starts.items():
            out = self.path('view.' + ending)
            done = run('draw', file, '-o', out, '--option', 'suited', '--at', '1.5')
            self.assertEqual((done.returncode, done.stdout), (0, b''), done.stderr.decode())
            with open(out, 'rb') as made:
                self.assertTrue(made.read().startswith(start))

    def test_wrong_use_of_draw(self):
        file = self.write(small.suited())
        self.fails(2, 'draw', file, '--option', 'suited', '--at', '1')
        self.fails(2, 'draw', file, '-o', self.path('x.gif'), '--option', 'suited', '--at', '1')
        self.fails(2, 'draw', file, '-o', self.path('x.svg'), '--option', 'nobody', '--at', '1')
        self.fails(2, 'draw', file, '-o', self.path('x.svg'), '--option', 'suited', '--at', '9')
        self.fails(2, 'draw', file, '-o', self.path('x.svg'), '--option', 'suited', '--at', '0,5')
        self.fails(4, 'draw', file, '-o', self.path('no/such/x.svg'), '--option', 'suited', '--at', '1')
        self.assertEqual(sorted(os.listdir(self.folder.name)), ['task.handspike.json'])

    def test_sheet_and_handout_repeat_byte_by_byte(self):
        file = self.write(small.suited())
        for command, more in (('sheet', []), ('sheet', ['--paper', 'letter']), ('handout', []), ('handout', ['--answers'])):
            pages = []
            for name in ('a.pdf', 'b.pdf'):
                done = run(command, file, '-o', self.path(name), *more)
                self.assertEqual((done.returncode, done.stdout), (0, b''), done.stderr.decode())
                with open(self.path(name), 'rb') as made:
                    pages.append(made.read())
            self.assertTrue(pages[0].startswith(b'%PDF'))
            self.assertEqual(pages[0], pages[1], command)
        self.fails(2, 'sheet', file)
        self.fails(2, 'sheet', file, '-o', self.path('c.pdf'), '--paper', 'a3')
        self.fails(4, 'sheet', file, '-o', self.path('no/such/c.pdf'))
        self.fails(3, 'sheet', self.write('{}', 'bad.json'), '-o', self.path('d.pdf'))
        self.assertFalse(os.path.exists(self.path('d.pdf')))


if __name__ == '__main__':
    unittest.main(argv=[sys.argv[0], *sys.argv[2:]], verbosity=2)
