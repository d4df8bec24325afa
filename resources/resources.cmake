# Icons, drawn for this program; one list, in the program under :/icons.
set(roundwright_icons
  add down error face fine finish fit fold-closed fold-open gauge hook
  lie-closes lie-cups lie-even lie-flat lie-gathers lie-ruffles
  loop more new note notice open print redo remove repeat reshape ring roundwright save scales stuffing turn undo up warning yarn)
list(TRANSFORM roundwright_icons PREPEND "${PROJECT_SOURCE_DIR}/resources/icons/")
list(TRANSFORM roundwright_icons APPEND ".svg")
qt_add_resources(roundwright_app roundwright PREFIX "/" BASE "${PROJECT_SOURCE_DIR}/resources" FILES ${roundwright_icons})

# The samples, in the program under :/samples.
qt_add_resources(roundwright_app roundwright_samples PREFIX "/" BASE "${PROJECT_SOURCE_DIR}" FILES
  "${PROJECT_SOURCE_DIR}/samples/puffin.roundwright"
  "${PROJECT_SOURCE_DIR}/samples/seal-pup.roundwright"
  "${PROJECT_SOURCE_DIR}/samples/starfish.roundwright")

# The translations, in the program under :/translations: roundwright_LANG.qm each, from lrelease.
file(GLOB roundwright_translations CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/resources/translations/roundwright_*.qm")
if(roundwright_translations)
  qt_add_resources(roundwright_app roundwright_translations PREFIX "/" BASE "${PROJECT_SOURCE_DIR}/resources"
    FILES ${roundwright_translations})
endif()
