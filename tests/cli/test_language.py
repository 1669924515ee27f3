#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The program in German, from the build tree: sentences follow the language, figures in files do not.
Use: test_language.py PROGRAM [unittest arguments]"""
import json
import os
import re
import subprocess
import sys
import tempfile
import unittest

PROGRAM = os.path.abspath(sys.argv[1])
TOP = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..')
EXAMPLE = os.path.join(TOP, 'data', 'examples', '12-glass-boxes.handspike.json')
VERDICTS = {'supported': 'Vertretbar', 'with_conditions': 'Unter Bedingungen vertretbar',
            'not_supported': 'Nicht vertretbar', 'undecided': 'Nicht entschieden'}
# Beginnings of lines that the English report has and a German one must not.
ENGLISH = ('Verdict:', 'Conditions:', 'All findings:', 'Assumptions', 'Cautions', 'Task:', 'File code:')


def run(*arguments, **env):
    clean = {k: v for k, v in os.environ.items()
             if k not in ('DISPLAY', 'WAYLAND_DISPLAY', 'LANGUAGE', 'LANG', 'HS_LOCALEDIR') and not k.startswith('LC_')}
    clean.update({'LC_ALL': 'C.UTF-8'} | env)
    done = subprocess.run([PROGRAM, *arguments], capture_output=True, env=clean, timeout=300)
    assert done.returncode == 0, done.stderr.decode()
    return done.stdout.decode()


def figures(text):
    """Every number of a report, in its order of size: words may stand elsewhere in another language."""
    return sorted(re.findall(r'\d+(?:\.\d+)?', text))


def real_german(folder):
    """The environment of a real German locale, made in a folder where the system has none; None when it cannot be made."""
    known = subprocess.run(['locale', '-a'], capture_output=True, text=True, check=False).stdout.lower().split()
    if 'de_de.utf8' in known or 'de_de.utf-8' in known:
        return {'LC_ALL': 'de_DE.UTF-8'}
    try:
        subprocess.run(['localedef', '-i', 'de_DE', '-f', 'UTF-8', os.path.join(folder, 'de_DE.UTF-8')],
                       capture_output=True, check=True)
    except (OSError, subprocess.CalledProcessError):
        return None
    return {'LC_ALL': 'de_DE.UTF-8', 'LOCPATH': folder}


class Report(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.english = run('assess', EXAMPLE)
        cls.german = run('assess', EXAMPLE, LANGUAGE='de')
        cls.results = json.loads(run('assess', EXAMPLE, '--json'))

    def test_each_verdict_is_said_in_german(self):
        said = re.findall(r'^Urteil: (.*)$', self.german, re.M)
        self.assertEqual(said, [VERDICTS[o['verdict']['status']] for o in self.results['options']])

    def test_no_english_line_is_left(self):
        for start in ENGLISH:
            self.assertIsNone(re.search('^' + re.escape(start), self.german, re.M), start)

    def test_as_many_lines_and_sections_as_in_english(self):
        heads = [re.findall(r'^[^\n]+\n-{3,}$', text, re.M) for text in (self.english, self.german)]
        self.assertEqual(len(heads[0]), len(heads[1]))

    def test_the_figures_are_the_same(self):
        # Sentences that hold a figure of their own ("0.63 m") write it in words of the language: none is in this report's findings.
        findings = [re.search(marks + r'(.*?)\n\n', text, re.S).group(1)
                    for text, marks in ((self.english, 'All findings:\n'), (self.german, 'Alle Befunde:\n'))]
        self.assertEqual(figures(findings[0]), figures(findings[1]))

    def test_an_unknown_language_is_english(self):
        self.assertEqual(run('assess', EXAMPLE, LANGUAGE='xx'), self.english)

    def test_help_in_german(self):
        self.assertIn('Aufruf:', run('--help', LANGUAGE='de'))


class Files(unittest.TestCase):
    def test_results_do_not_depend_on_the_language(self):
        plain, german = (json.loads(run('assess', EXAMPLE, '--json', **env)) for env in ({}, {'LANGUAGE': 'de'}))
        self.assert_same(plain, german)

    def test_results_do_not_depend_on_a_real_locale(self):
        with tempfile.TemporaryDirectory(prefix='handspike-locale-') as folder:
            env = real_german(folder)
            if env is None:
                print('no German locale on this machine and none can be made: not tested', file=sys.stderr)
                return
            self.assert_same(json.loads(run('assess', EXAMPLE, '--json')), json.loads(run('assess', EXAMPLE, '--json', **env)))
            report = run('assess', EXAMPLE, **env)
            self.assertRegex(report, r'\d,\d\xa0kg')
            self.assertNotRegex(report, r'\d\.\d+\xa0?\s?(kg|m|kN)\b')
            self.assertIn('Urteil: ', report)

    def assert_same(self, one, other, path='results'):
        """Numbers, keys and words of the format alike; sentences alone may differ."""
        self.assertIs(type(one), type(other), path)
        if isinstance(one, dict):
            self.assertEqual(list(one), list(other), path)
            for key in one:
                self.assert_same(one[key], other[key], path + '.' + key)
        elif isinstance(one, list):
            self.assertEqual(len(one), len(other), path)
            for i, entry in enumerate(one):
                self.assert_same(entry, other[i], f'{path}[{i}]')
        elif not (isinstance(one, str) and ' ' in one):
            self.assertEqual(one, other, path)


class Sheet(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory(prefix='handspike-language-')
        self.addCleanup(self.folder.cleanup)
        if 'handspike sheet' not in run('--help'):
            self.fail('this build has no sheet')

    def words(self, *arguments, **env):
        out = os.path.join(self.folder.name, 'sheet.pdf')
        run('sheet', EXAMPLE, '-o', out, *arguments, **env)
        text = subprocess.run(['pdftotext', '-layout', out, '-'], capture_output=True, check=True, text=True).stdout
        return ' '.join(text.split())

    def test_language_asked_for(self):
        for env in ({}, {'LC_ALL': 'C'}, {'LANGUAGE': 'xx'}):
            text = self.words('--lang', 'de', **env)
            self.assertIn(VERDICTS['with_conditions'] + ': One in powered arms', text)
            self.assertIn('Seite 1 von', text)
            self.assertNotIn('Supported', text)

    def test_english_asked_for_in_a_german_session(self):
        text = self.words('--lang', 'en', LANGUAGE='de')
        self.assertIn('Supported with conditions', text)
        self.assertNotIn('vertretbar', text)

    def test_the_session_s_language(self):
        self.assertIn(VERDICTS['with_conditions'], self.words(LANGUAGE='de'))


if __name__ == '__main__':
    unittest.main(argv=sys.argv[:1] + sys.argv[2:])
