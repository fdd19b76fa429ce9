# Writes an assembler file that holds each given file byte for byte, and a table of (name, begin, end) that
# core/reference/embedded.cpp reads. The name is the path below resources/.
function(embed_files output)
  set(data "")
  set(table "")
  set(number 0)
  foreach(file IN LISTS ARGN)
    file(RELATIVE_PATH name ${PROJECT_SOURCE_DIR}/resources ${file})
    string(APPEND data
      "name_${number}: .asciz \"${name}\"\nbegin_${number}: .incbin \"${file}\"\nend_${number}: .byte 0\n")
    string(APPEND table ".balign 8\n.quad name_${number}, begin_${number}, end_${number}\n")
    math(EXPR number "${number} + 1")
  endforeach()
  file(CONFIGURE OUTPUT ${output} CONTENT
"    .section .data.rel.ro, \"aw\"
    .balign 8
    .globl loopwright_embedded_files
loopwright_embedded_files:
${table}    .globl loopwright_embedded_files_end
loopwright_embedded_files_end:
    .section .rodata
${data}    .section .note.GNU-stack, \"\", %progbits
")
  set_source_files_properties(${output} PROPERTIES OBJECT_DEPENDS "${ARGN}")
endfunction()
