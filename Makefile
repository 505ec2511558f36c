# One place for every task. On a machine with only Debian, Python 3.11 (with venv) and pip, each target sets up
# what it needs first: the virtual environment in .venv from the locked, hashed lists in requirements/.

PYTHON ?= $(shell command -v python3.11 || command -v python3)
VENV := .venv
BIN := $(VENV)/bin
EXAMPLE := examples/lantern-walk.toml
OUT := out
PEERS := build/peers
PYTEST_FLAGS ?= -n auto

.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
.PHONY: help demo gallery test check bench compare peers format lint types layers tests browser lock

help: ## say what can be made
	@grep -E '^[a-z]+:.*##' Makefile | sed -E 's/^([a-z]+):.*## /  make \1	/'

demo: $(VENV)/run.stamp ## plan the example project and write out/ (plan, table sheet, pattern, pictures)
	@mkdir -p $(OUT)
	$(BIN)/stitchflip plan $(EXAMPLE) --json > $(OUT)/plan.json.part
	@mv $(OUT)/plan.json.part $(OUT)/plan.json
	$(BIN)/stitchflip pattern $(EXAMPLE) --out $(OUT)

gallery: $(VENV)/run.stamp ## draw the gallery of the examples again
	$(BIN)/python -m stitchflip.cli.gallery .

test: browser tests ## run every test

check: lint types layers test ## format, lint, types, layers, then every test (documents included)

bench: $(VENV)/dev.stamp peers ## measure speed and memory
	$(BIN)/python -m bench

compare: $(VENV)/dev.stamp peers ## measure cutting beside other solvers and write docs/reference/cutting-bench.md
	$(BIN)/python -m bench.cutting

format: $(VENV)/dev.stamp ## set the code in the house format and sort imports
	$(BIN)/ruff check --select I --fix
	$(BIN)/ruff format

lint: $(VENV)/dev.stamp
	$(BIN)/ruff format --check
	$(BIN)/ruff check

types: $(VENV)/dev.stamp
	$(BIN)/mypy

layers: $(VENV)/dev.stamp
	$(BIN)/lint-imports

tests: $(VENV)/dev.stamp
	$(BIN)/pytest $(PYTEST_FLAGS)

# The pages are looked at in Debian's own Chromium.
browser:
	@if command -v chromium >/dev/null || command -v chromium-browser >/dev/null || command -v google-chrome >/dev/null; then :; \
	elif command -v apt-get >/dev/null && [ "$$(id -u)" = 0 ]; then \
	  echo "Installing Chromium for the browser tests" && \
	  apt-get update -qq && \
	  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium fonts-dejavu-core >/dev/null; \
	else \
	  echo "The browser tests need Chromium. Install it, then run make test again: sudo apt-get install chromium" >&2; \
	  exit 1; \
	fi

$(VENV)/bin/python:
	$(PYTHON) -c 'import sys; sys.exit("Python 3.11 or newer is needed; this is " + sys.version) if sys.version_info < (3, 11) else 0'
	$(PYTHON) -m venv $(VENV) || { rm -rf $(VENV); echo "No virtual environment could be made. On Debian: sudo apt-get install python3-venv" >&2; exit 1; }

$(VENV)/run.stamp: requirements/run.txt pyproject.toml | $(VENV)/bin/python
	$(BIN)/python -m pip install --quiet --require-hashes -r requirements/run.txt
	$(BIN)/python -m pip install --quiet --no-deps --no-build-isolation --editable .
	@touch $@

$(VENV)/dev.stamp: requirements/dev.txt $(VENV)/run.stamp
	$(BIN)/python -m pip install --quiet --require-hashes -r requirements/dev.txt
	@touch $@

# What cutting is measured against runs in an environment of its own: one of the peers has no wheel for Python 3.11.
# Name the interpreter with PYTHON312=... where it is not found. Without one their rows say "not measured".
peers: $(PEERS)/peers.stamp

$(PEERS)/peers.stamp: requirements/peers.txt
	@rm -rf $(PEERS)
	@mkdir -p $(PEERS)
	@for python in "$(PYTHON312)" "$$(command -v python3.12)" "$$(pyenv prefix 3.12 2>/dev/null)/bin/python3.12" "$$(uv python find 3.12 2>/dev/null)"; do \
	  if [ -n "$$python" ] && "$$python" -c 'import sys, venv; sys.exit(sys.version_info[:2] != (3, 12))' 2>/dev/null; then \
	    echo "Setting up the solvers that cutting is measured against"; \
	    "$$python" -m venv $(PEERS) && $(PEERS)/bin/python -m pip install --quiet --require-hashes -r requirements/peers.txt || rm -rf $(PEERS)/bin; \
	    break; \
	  fi; \
	done
	@if [ -x $(PEERS)/bin/python ]; then touch $@; else echo "No Python 3.12 here: other solvers are not measured" >&2; fi

# Resolved anew against the public index alone, so that the hashes are those of the files everybody gets.
lock: peers ## pin the newest fitting versions again, with hashes
	$(PYTHON) -m venv --clear build/lock
	PIP_CONFIG_FILE=/dev/null build/lock/bin/pip install --quiet pip-tools==7.6.2
	$(LOCK) --output-file requirements/run.txt pyproject.toml requirements/build.in
	$(LOCK) --constraint requirements/run.txt --output-file requirements/dev.txt pyproject.toml requirements/build.in requirements/dev.in
	sed -i -E '/^(#.*)?$$/d' requirements/run.txt requirements/dev.txt
	$(PEERS)/bin/python -m venv --clear build/lock
	PIP_CONFIG_FILE=/dev/null build/lock/bin/pip install --quiet pip-tools==7.6.2
	$(LOCK) --output-file requirements/peers.txt requirements/peers.in
	sed -i -E '/^(#.*)?$$/d' requirements/peers.txt

LOCK = PIP_CONFIG_FILE=/dev/null PIP_FIND_LINKS= build/lock/bin/pip-compile --quiet --upgrade --strip-extras --allow-unsafe \
  --generate-hashes --no-annotate --no-header --no-emit-index-url --no-emit-trusted-host --no-emit-find-links --no-emit-options
