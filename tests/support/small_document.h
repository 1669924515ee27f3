/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  which document do tests of model start from?
 * Answer:    a box between two people, a carry of 4 m, invented.
 * Not here:  documents that must be refused (tests/documents/bad). */
#ifndef HS_SMALL_DOCUMENT_H
#define HS_SMALL_DOCUMENT_H

#define HS_SMALL_DOCUMENT                                                                      \
    "{\"format\":\"handspike-assessment\",\"version\":1,\"about\":{\"title\":\"Box to the "    \
    "bench\"},"                                                                                \
    "\"load\":{\"parts\":[{\"id\":\"box\",\"shape\":\"box\",\"size_m\":[0.6,0.4,0.3],"         \
    "\"centre_m\":[0,0,0.15],"                                                                 \
    "\"mass_kg\":24,\"known\":\"weighed\"}],\"grips\":[{\"id\":\"front\",\"at_m\":[0.3,0,0.2]" \
    ",\"kind\":\"handle\"},"                                                                   \
    "{\"id\":\"rear\",\"at_m\":[-0.3,0,0.2],\"kind\":\"handle\"}]},"                           \
    "\"site\":{\"friction\":0.6},"                                                             \
    "\"route\":{\"points\":[{\"x_m\":0,\"z_m\":0.5,\"move\":\"start\",\"set_down\":true},"     \
    "{\"x_m\":0,\"z_m\":0.7,\"move\":\"lift\"},{\"x_m\":4,\"z_m\":0.7,\"move\":\"carry\","     \
    "\"set_down\":true}]},"                                                                    \
    "\"workers\":[{\"id\":\"w1\"},{\"id\":\"w2\"}],"                                           \
    "\"options\":[{\"id\":\"crew\",\"baseline\":true,\"bearers\":["                            \
    "{\"id\":\"A\",\"worker\":\"w1\",\"grips\":[\"front\"]},{\"id\":\"B\",\"worker\":\"w2\","  \
    "\"grips\":[\"rear\"]}]}]}"

#endif
