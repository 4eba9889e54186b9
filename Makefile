# `make demo` and `make test` need nothing but make and Python 3.11 or newer.

PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
INSTALLED := $(VENV)/.installed
PIP := $(BIN)/python -m pip --disable-pip-version-check --quiet

# The captions that `make demo` reads; their sheet lies beside them.
DEMO ?= $(firstword $(wildcard samples/demo/*.vtt samples/demo/*.srt))
FORMAT ?= table

.PHONY: help install demo test slow lint types check weights lock clean

help: ## what can be made
	@grep -E '^[a-z]+:.*##' Makefile | sed -E 's/^([a-z]+):.*## /\1\t/' | expand -t 10

install: $(INSTALLED) ## the program and its tests' needs into .venv, every file checked against requirements.lock

$(INSTALLED): requirements.lock pyproject.toml
	@$(PYTHON) -c 'import sys; sys.exit(None if sys.version_info >= (3, 11) else "notesmith needs Python 3.11 or newer; name one with: make PYTHON=python3.11")'
	$(PYTHON) -m venv $(VENV)
	$(PIP) install --require-hashes --only-binary :all: --no-deps -r requirements.lock
	$(PIP) install --no-deps --no-build-isolation --editable .
	@touch $@

demo: $(INSTALLED) ## the notes of the sample recording
	$(BIN)/notesmith notes $(DEMO) --format $(FORMAT)

test: $(INSTALLED) ## the tests that take minutes at most
	$(BIN)/python -m pytest -m "not slow and not benchmark"

slow: $(INSTALLED) ## the tests that take longer
	$(BIN)/python -m pytest -m "slow or benchmark" || [ $$? -eq 5 ]  # 5: there are none

lint: $(INSTALLED) ## what ruff has to say
	$(BIN)/ruff check .

types: $(INSTALLED) ## what mypy has to say
	$(BIN)/mypy

check: test lint types slow ## all of them

weights: $(INSTALLED) ## all that was learned from the annotated recordings anew: minutes on a GPU, hours without
	$(PIP) install --require-hashes --only-binary :all: --no-deps -r training/requirements.lock
	mkdir -p build
	$(BIN)/python -m training rows build/rows.npz
	$(BIN)/python -m training fit build/rows.npz build/encoder.pt
	$(BIN)/python -m training export build/rows.npz build/encoder.pt
	for fold in 0 1 2 3; do $(BIN)/python -m training held-out build/rows.npz build/held-out-$$fold.npz --fold $$fold || exit 1; done
	$(BIN)/python -m training turns build/held-out-*.npz
	$(BIN)/python -m training preparations

COMPILE := uv pip compile --python-version 3.11 --generate-hashes --no-header --no-emit-index-url --no-emit-find-links --quiet

lock: ## what is installed anew, for Python 3.11 to 3.13; needs the program uv
	$(COMPILE) pyproject.toml --all-extras --group test --group build --universal --output-file requirements.lock
	$(COMPILE) training/requirements.in --universal --no-annotate --constraints requirements.lock --output-file training/requirements.lock
	$(COMPILE) training/encoder.in --no-deps --no-annotate >> training/requirements.lock

clean: ## away with what was made
	rm -rf $(VENV) build dist .pytest_cache .mypy_cache .ruff_cache .hypothesis
