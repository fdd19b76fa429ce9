# embed_files(OUTPUT SYMBOL FOLDER FILE...) writes an assembler file that holds each FILE byte for byte, and a table of
# (name, begin, end) from SYMBOL to SYMBOL_end that core/reference/embedded.h reads. The name is the path below FOLDER.
function(embed_files output symbol folder)
  set(data "")
  set(table "")
  set(number 0)
  foreach(file IN LISTS ARGN)
    file(RELATIVE_PATH name ${folder} ${file})
    string(APPEND data
      "name_${number}: .asciz \"${name}\"\nbegin_${number}: .incbin \"${file}\"\nend_${number}: .byte 0\n")
    string(APPEND table ".balign 8\n.quad name_${number}, begin_${number}, end_${number}\n")
    math(EXPR number "${number} + 1")
  endforeach()
  file(CONFIGURE OUTPUT ${output} CONTENT
"    .section .data.rel.ro, \"aw\"
    .balign 8
    .globl ${symbol}
${symbol}:
${table}    .globl ${symbol}_end
${symbol}_end:
    .section .rodata
${data}    .section .note.GNU-stack, \"\", %progbits
")
  set_source_files_properties(${output} PROPERTIES OBJECT_DEPENDS "${ARGN}")
endfunction()
