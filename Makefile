# The developer's verbs. `make` alone prints them.
PYTHON ?= .venv/bin/python
export PYTHONPATH := tests

help:
	@sed -n 's/^\([a-z]*\):.*## /\1\t/p' $(MAKEFILE_LIST)

.venv:
	python3 -m venv .venv
	.venv/bin/pip install -q --require-hashes -r requirements/tests.txt
	.venv/bin/pip install -q --no-deps -e .

check: .venv ## lint, and generated pages compared with their source
	$(PYTHON) -m ruff check src tests tools benchmarks
	$(PYTHON) tools/docs.py --check

test: .venv ## every test; those of a tool that is missing are skipped with a word
	$(PYTHON) -m pytest

browser: .venv ## figures and pages in a real browser (Chromium)
	$(PYTHON) -m pytest tests/browser

docs: .venv ## write the generated reference pages
	$(PYTHON) tools/docs.py

figures: .venv ## draw every figure of every example into build/figures
	$(PYTHON) tools/figures.py build/figures

published: .venv ## the table of published worked examples
	$(PYTHON) tests/published/table.py

bench: .venv ## ratios of speed, each against something run beside it
	$(PYTHON) benchmarks/run.py

requirements: ## pin the tests' libraries with hashes
	uv pip compile --universal --generate-hashes --no-emit-index-url --python-version 3.11 --extra tests pyproject.toml -o requirements/tests.txt

.PHONY: help check test browser docs figures published bench requirements
