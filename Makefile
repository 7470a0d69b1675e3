# `make demo` and `make test` set up all they need in .venv; nothing outside this folder is touched
# but for Debian's chromium, which the browser tests use where it is installed.
PYTHON ?= python3
VENV   := .venv
BIN    := $(VENV)/bin
READY  := $(VENV)/.ready
RUNREADY := $(VENV)/.run-ready

.PHONY: demo test check goldens clean

demo: $(RUNREADY)  ## check the demo catalog, rank for one demo buyer, write the site
	$(BIN)/spindlewise --catalog catalog check
	$(BIN)/spindlewise --catalog catalog rank --buyer club-racer
	$(BIN)/spindlewise --catalog catalog publish --out site_out

test: check  ## everything that .ci/run runs

check: $(READY)  ## format, lint, types, structure, tests, coverage, schema, catalog, site twice
	$(BIN)/ruff format --check .
	$(BIN)/ruff check .
	$(BIN)/mypy
	$(BIN)/python -m pytest -n 2 --dist worksteal --cov --cov-report=term-missing:skip-covered --cov-fail-under=95
	$(BIN)/spindlewise --catalog catalog check

$(VENV)/bin/python:
	$(PYTHON) -m venv $(VENV)

$(RUNREADY): pyproject.toml | $(VENV)/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e .
	touch $@

$(READY): pyproject.toml | $(VENV)/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e '.[test,dev]'
	touch $@ $(RUNREADY)

clean:
	rm -rf $(VENV) .mypy_cache .pytest_cache .ruff_cache .hypothesis .coverage
