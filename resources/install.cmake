# What is installed, and the Debian package. Included at the end of the top CMakeLists.txt.
include(GNUInstallDirs)

set(yardcast_programs "")
foreach(program yardcast yardcast-cli)
    if(TARGET ${program})
        list(APPEND yardcast_programs ${program})
    endif()
endforeach()
if(NOT yardcast_programs)
    return()
endif()

set(yardcast_resources ${CMAKE_CURRENT_LIST_DIR})
set(yardcast_data ${CMAKE_INSTALL_DATADIR}/yardcast)

install(TARGETS ${yardcast_programs} RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(FILES ${yardcast_resources}/yardcast.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
install(FILES ${yardcast_resources}/yardcast.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages)
install(FILES ${yardcast_resources}/icons/yardcast.svg
    DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/sample-projects/ DESTINATION ${yardcast_data}/samples
    FILES_MATCHING PATTERN "*.yardplan")
foreach(file example.yardprices yardplan.schema.json yardprices.schema.json)
    install(FILES ${yardcast_resources}/${file} DESTINATION ${yardcast_data})
endforeach()
foreach(program ${yardcast_programs})
    # Debian keeps manual pages compressed.
    set(manual ${CMAKE_BINARY_DIR}/${program}.1.gz)
    execute_process(COMMAND gzip -9nc ${yardcast_resources}/man/${program}.1 OUTPUT_FILE ${manual}
        COMMAND_ERROR_IS_FATAL ANY)
    install(FILES ${manual} DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
endforeach()
install(FILES ${yardcast_resources}/copyright ${PROJECT_SOURCE_DIR}/README.md
    DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/yardcast)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME yardcast)
set(CPACK_PACKAGE_VENDOR "Yardcast developers")
set(CPACK_PACKAGE_CONTACT "Yardcast developers <yardcast@example.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "planner for casting an outdoor kitchen in concrete")
set(CPACK_RESOURCE_FILE_LICENSE ${yardcast_resources}/COPYING)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_OUTPUT_FILE_PREFIX ${CMAKE_BINARY_DIR})
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_MAINTAINER "${CPACK_PACKAGE_CONTACT}")
set(CPACK_DEBIAN_PACKAGE_SECTION graphics)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
# dpkg-shlibdeps finds what the programs link (libqt6svg6 also brings the plugin for icons); a font is only loaded.
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "fonts-dejavu-core")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
"Draw the kitchen once - counters with cutouts, supports, panels, batten
fronts - and have concrete, steel, weight, lifting, moulds, shopping list
and cautions computed from the drawing while you change it.

Everything works offline. The figures help to plan; they do not replace
local rules, licensed trades or an engineer.")
include(CPack)
