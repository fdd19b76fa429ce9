// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <linux/capability.h>
#include <stdexcept>
#include <sys/syscall.h>
#include <unistd.h>

namespace loopwright {

/// While it lives, this thread is bound by the permissions of files, also when root runs the tests.
class WithoutPrivileges {
  public:
    WithoutPrivileges() {
        if (syscall(SYS_capget, &header_, kept_) != 0) throw std::runtime_error("privileges cannot be read");
        __user_cap_data_struct dropped[2] = {kept_[0], kept_[1]};
        dropped[0].effective = dropped[1].effective = 0;
        if (syscall(SYS_capset, &header_, dropped) != 0)
            throw std::runtime_error("privileges cannot be dropped");
    }
    ~WithoutPrivileges() { syscall(SYS_capset, &header_, kept_); }
    WithoutPrivileges(const WithoutPrivileges&) = delete;
    WithoutPrivileges& operator=(const WithoutPrivileges&) = delete;

  private:
    __user_cap_header_struct header_{_LINUX_CAPABILITY_VERSION_3, 0};
    __user_cap_data_struct kept_[2]{};
};

} // namespace loopwright
