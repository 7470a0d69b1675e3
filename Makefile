# `make demo` and `make test` set up all they need in .venv; nothing outside this folder is touched.
# The browser tests need Debian's chromium: .ci/run installs it, elsewhere they are left out with a word.
PYTHON ?= python3
VENV   := .venv
BIN    := $(VENV)/bin
USED   := $(VENV)/.ready-to-use
READY  := $(VENV)/.ready-to-test
SITES  := $(VENV)/sites

.PHONY: demo test check format lint types tests schemas catalog sites goldens bench soak mutants clean

demo: $(USED)  ## check the demo catalog, rank for one demo buyer with reasons, write the site
	$(BIN)/spindlewise --catalog catalog check
	$(BIN)/spindlewise --catalog catalog rank --buyer club-racer --explain
	$(BIN)/spindlewise --catalog catalog publish --out site_out
	@echo
	@echo "The site is written. Open site_out/index.html in a browser."

test: check  ## everything that .ci/run runs

check: format lint types tests schemas catalog sites
	@echo "All checks passed."

format: $(READY)
	$(BIN)/ruff format --check .

lint: $(READY)
	$(BIN)/ruff check .

types: $(READY)
	$(BIN)/mypy

tests: $(READY)  ## tests, doctests and branch coverage: 95 % in all, 100 % of the mathematics
	$(BIN)/python -m pytest -n 2 --dist worksteal --cov --cov-report=term:skip-covered --cov-fail-under=95
	$(BIN)/python -m coverage report --precision=2 --fail-under=100 \
	  --include='*/decide/*,*/cost/*,*/fit/*,*/reception/*,*/catalog/money.py'

schemas: $(READY)  ## the committed schemas are those of the models
	rm -rf $(SITES)/schemas && mkdir -p $(SITES)/schemas
	$(BIN)/spindlewise schema --write $(SITES)/schemas
	diff -r schemas $(SITES)/schemas

catalog: $(READY)
	$(BIN)/spindlewise --catalog catalog check

sites: $(READY)  ## the site built twice, under other conditions, is the same to the byte
	rm -rf $(SITES)/one $(SITES)/two
	PYTHONHASHSEED=1 TZ=UTC LC_ALL=C $(BIN)/spindlewise --catalog catalog publish --out $(SITES)/one > /dev/null
	PYTHONHASHSEED=2 TZ=Asia/Tokyo LC_ALL=C.UTF-8 $(BIN)/spindlewise --catalog catalog publish --out $(SITES)/two > /dev/null
	diff -r $(SITES)/one $(SITES)/two

goldens: $(READY)  ## write the expected pages of the commands anew
	GOLDENS=write $(BIN)/python -m pytest -q tests/cli

bench: $(READY)  ## ratios of speed in one run; BENCH=--write puts them into DEVELOPERS.md
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e '.[speed]'
	$(BIN)/python tests/speed/bench.py $(BENCH)

soak: $(READY)  ## long runs: programs killed while they write, broken files, the demo's bytes elsewhere (an hour)
	$(BIN)/python tests/soak/killed_programs.py
	$(BIN)/python tests/soak/same_bytes.py
	$(BIN)/python tests/soak/known_truth.py
	$(BIN)/python tests/soak/any_bytes.py

mutants: $(READY)  ## how strong the tests of the mathematics are: changes made to it, changes noticed (hours)
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e '.[strength]'
	$(BIN)/python -m mutmut run --max-children 2
	$(BIN)/python tests/strength/table.py

$(VENV)/bin/python:
	$(PYTHON) -m venv $(VENV)

$(USED): pyproject.toml | $(VENV)/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e .
	touch $@

$(READY): pyproject.toml | $(VENV)/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e '.[fit,test,dev]'
	touch $@ $(USED)

clean:
	rm -rf $(VENV) .mypy_cache .pytest_cache .ruff_cache .hypothesis .coverage mutants
