#!/bin/sh
# Publishes the gardens of a git repository, on any machine that has git and Feedround:
#
#   sh publish-from-git.sh --first gardens/      once
#   sh publish-from-git.sh gardens/              each time after that, also each night
#
# What was published lies on the branch `published` ($PUBLISHED_BRANCH) of the remote `origin`
# ($PUBLISHED_REMOTE), which a web host can serve. It is fetched first, since it alone knows what your
# calendars have told: without it the past would be lost, and every entry would come anew. So where
# it cannot be fetched nothing is published. Other arguments go to `feedround publish`.
set -eu

branch=${PUBLISHED_BRANCH:-published}
remote=${PUBLISHED_REMOTE:-origin}
export GIT_AUTHOR_NAME="${GIT_AUTHOR_NAME:-Feedround}" GIT_AUTHOR_EMAIL="${GIT_AUTHOR_EMAIL:-feedround@localhost}"
export GIT_COMMITTER_NAME="$GIT_AUTHOR_NAME" GIT_COMMITTER_EMAIL="$GIT_AUTHOR_EMAIL"

# Calendar lines end in CR LF, whatever this machine is set to.
git() {
  command git -c core.autocrlf=false "$@"
}

fail() {
  echo "$1" >&2
  exit 3
}

first=no
if [ "${1-}" = --first ]; then
  first=yes
  shift
fi
[ $# -gt 0 ] || { echo "usage: sh $0 [--first] <garden file or folder>..." >&2; exit 2; }

if [ "$first" = yes ]; then
  # 2: the remote answers, and has no such branch.
  found=0
  git ls-remote --exit-code "$remote" "refs/heads/$branch" >/dev/null || found=$?
  [ "$found" -ne 0 ] || fail "$remote has a branch $branch already: leave --first out"
  [ "$found" -eq 2 ] || fail "$remote cannot be asked: nothing was published"
  last=$(git commit-tree "$(git mktree </dev/null)" -m "Nothing published yet")
else
  git fetch --quiet "$remote" "refs/heads/$branch" ||
    fail "what was published before cannot be fetched from the branch $branch of $remote: nothing was published (the very first time: --first)"
  last=$(git rev-parse FETCH_HEAD)
  [ -n "$(git ls-tree --name-only "$last" feedround-files.json)" ] ||
    fail "the branch $branch of $remote holds no published gardens: nothing was published"
fi

before=$(git status --porcelain)
work=$(mktemp -d)
trap 'git worktree remove --force "$work/public" 2>/dev/null || :; rm -rf "$work"' EXIT
git worktree add --quiet --detach "$work/public" "$last"

# 1: some gardens have problems. Theirs stay as they were, the others are published.
published=0
feedround publish "$work/public" "$@" || published=$?
[ "$published" -le 1 ] || exit "$published"
[ "$(git status --porcelain)" = "$before" ] ||
  fail "publishing changed files of the repository itself, which are not kept: a garden file names a calendar (calendar: file), take that line out"

git -C "$work/public" add --all
if ! git -C "$work/public" diff --cached --quiet; then
  git -C "$work/public" commit --quiet -m "Published"
  # Refused where another run was faster: nothing of either is lost, the next run goes on from there.
  git -C "$work/public" push --quiet "$remote" "HEAD:refs/heads/$branch" ||
    fail "what was published could not be kept on the branch $branch of $remote: run this again"
fi
exit "$published"
