# Shared by ./start and ./check: sees to it that what they need is there. Meant to be sourced from the top folder.

need_node() {
  if ! command -v node >/dev/null 2>&1; then
    echo "Pinwright needs Node.js 20.19 or later; no 'node' was found. Install it and run this again." >&2
    exit 1
  fi
  if ! node -e 'const [a, b] = process.versions.node.split(".").map(Number); process.exit(a > 20 || (a === 20 && b >= 19) ? 0 : 1)'; then
    echo "Pinwright needs Node.js 20.19 or later; found $(node --version). Install a newer one and run this again." >&2
    exit 1
  fi
}

need_packages() {
  if [ ! -d node_modules ] || [ package-lock.json -nt node_modules/.package-lock.json ]; then
    echo "Installing npm packages (about a minute the first time) …" >&2
    npm ci --no-audit --no-fund --loglevel=error >&2
  fi
}

# need_debian COMMAND, py:PYTHON-MODULE or file:PATTERN, PACKAGE, …
need_debian() {
  missing=""
  while [ $# -gt 1 ]; do
    case "$1" in
      py:*) /usr/bin/python3 -c "import ${1#py:}" >/dev/null 2>&1 || missing="$missing $2" ;;
      # shellcheck disable=SC2086
      file:*) ls ${1#file:} >/dev/null 2>&1 || missing="$missing $2" ;;
      *) command -v "$1" >/dev/null 2>&1 || missing="$missing $2" ;;
    esac
    shift 2
  done
  [ -n "$missing" ] || return 0
  if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; then
    echo "Installing Debian packages:$missing …" >&2
    apt-get update -qq >&2
    # shellcheck disable=SC2086
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
  else
    echo "Missing Debian packages. Install them as root and run this again:" >&2
    echo "  apt-get install$missing" >&2
    exit 1
  fi
}
