# Completion of circuits in bash. Write in ~/.bashrc: source <(circuits completion bash)
_circuits() {
  local line=${COMP_LINE:0:COMP_POINT} word cut= suggestion
  local -a found
  mapfile -t found < <("${COMP_WORDS[0]}" '[suggest]' "$line" 2>/dev/null)
  COMPREPLY=()
  # bash breaks words at = and :, and wants only what follows the last break.
  word=${line##*[[:space:]]}
  if [[ $COMP_WORDBREAKS == *=* && $word == *[=:]* ]]; then cut=${word%"${word##*[=:]}"}; fi
  for suggestion in "${found[@]}"; do
    suggestion=${suggestion#"$cut"}
    if [[ $suggestion == *[^[:alnum:]_.,=:/@~+-]* ]]; then printf -v suggestion %q "$suggestion"; fi
    COMPREPLY+=("$suggestion")
  done
}
complete -o default -F _circuits circuits
