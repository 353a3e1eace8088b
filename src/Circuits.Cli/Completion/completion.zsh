#compdef circuits
# Completion of circuits in zsh. Write in ~/.zshrc, behind compinit: source <(circuits completion zsh)
# or save this as _circuits in a folder of $fpath.
_circuits() {
  local -a found
  found=("${(@f)$("${words[1]}" '[suggest]' "${(j: :)words[1,CURRENT-1]} ${PREFIX}" 2>/dev/null)}")
  found=(${found:#})
  if (( $#found )); then compadd -- $found; else _files; fi
}
if [[ $funcstack[1] == _circuits ]]; then _circuits "$@"; else compdef _circuits circuits; fi
